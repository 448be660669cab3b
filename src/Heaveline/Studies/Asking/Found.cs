using Heaveline.Answers;

namespace Heaveline.Studies;

/// <summary>What came of looking for a car or a road by its name.</summary>
/// <typeparam name="T">Car or road.</typeparam>
public sealed record Found<T>
    where T : class
{
    /// <summary>The name by which it was looked for.</summary>
    public required string Name { get; init; }

    /// <summary>A short name for people, to tell two things of one name apart.</summary>
    public string ShortName { get; init => field = value ?? ""; } = "";

    /// <summary>The thing; null when it is not there or was refused.</summary>
    public T? Value { get; init; }

    /// <summary>Why there is none, a sentence; blank where there is.</summary>
    public string Refusal { get; init; } = "";

    /// <summary>Whether there is none of that name at all.</summary>
    public bool IsMissing { get; init; }

    /// <summary>The files that it was read from, as they are called where it was found.</summary>
    public IReadOnlyList<InputText> Inputs { get; init; } = [];

    /// <summary>The texts that it was read from, or the digests of long ones: equal texts are equal things.</summary>
    public IReadOnlyList<string> Texts => [.. Inputs.Select(i => i.Text.Length <= Longest ? i.Text : i.Sha256)];

    // A measured road may have millions of lines, and what is read is compared again and again.
    private const int Longest = 1 << 16;
}
