using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Garages;

/// <summary>Something that was done to a file of the garage.</summary>
/// <param name="Words">What, in a sentence or two.</param>
/// <param name="File">The file that it was done to.</param>
/// <param name="Now">The file that stands in its place; the same one where it stayed, null where it was taken out.</param>
/// <param name="Kept">What was taken out and can be put back, a base before its variants; none otherwise.</param>
/// <param name="Touched">Every file that it wrote or took away: nobody needs to be told of these by the disk.</param>
public sealed record GarageDeed(string Words, string File, string? Now, IReadOnlyList<EarlierVersion> Kept, IReadOnlyList<string> Touched);
