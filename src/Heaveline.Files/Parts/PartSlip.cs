using Heaveline.Parts;

namespace Heaveline.Files.Parts;

/// <summary>A likely slip of the pen in a part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Key">The key at which it stands.</param>
/// <param name="Words">What is odd, behind the part's name, with its full stop.</param>
/// <param name="Advice">The likely slip and what to look at.</param>
internal sealed record PartSlip(Part Part, string Key, string Words, string Advice);
