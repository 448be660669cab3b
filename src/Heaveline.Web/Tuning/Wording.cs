namespace Heaveline.Web.Tuning;

/// <summary>One changed key of a car file: the keys that lead to it from the outside in, and what stands there, as one would write it on one line.</summary>
/// <param name="Path">The keys ("front", "spring", "rate").</param>
/// <param name="Text">The value; ~ takes the key out.</param>
public sealed record Wording(IReadOnlyList<string> Path, string Text)
{
    /// <summary>Takes a key out of the file below.</summary>
    public const string Nothing = "~";
}
