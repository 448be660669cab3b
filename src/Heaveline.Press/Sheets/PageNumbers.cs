namespace Heaveline.Press.Sheets;

/// <summary>Where the parts of a report begin, and how many pages it has; known once it has been set.</summary>
/// <param name="Parts">Page of each part, from 1.</param>
/// <param name="Pages">How many pages.</param>
internal sealed record PageNumbers(IReadOnlyList<int> Parts, int Pages)
{
    /// <summary>Before the first setting.</summary>
    public static PageNumbers Unknown { get; } = new([], 0);

    /// <summary>Page of a part in words; as long as any when unknown, so that the contents take the same room both times.</summary>
    public string Of(int part) => part < Parts.Count ? FormattableString.Invariant($"{Parts[part]}") : "0";
}
