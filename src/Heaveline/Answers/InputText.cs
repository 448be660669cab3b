using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>A text that an answer was computed from: a car file, a variant, a road.</summary>
public sealed record InputText
{
    private const int DigestLength = 64;

    /// <summary>Its name: as whoever found it calls its file; in a report as the command there calls it.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Name the text."); }

    /// <summary>The whole text.</summary>
    public required string Text { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>SHA-256 of its bytes as they lie in the file (FIPS 180-4), 64 hexadecimal digits, small letters.</summary>
    public required string Sha256
    {
        get;
        init => field = Digest(value);
    }

    /// <summary>Whether it comes with the program, so that nobody needs to save it.</summary>
    public bool BuiltIn { get; init; }

    /// <summary>A digest as it must be.</summary>
    internal static string Digest(string value) => value is { Length: DigestLength } && value.All(c => char.IsAsciiDigit(c) || c is >= 'a' and <= 'f')
        ? value
        : throw new RefusedValueException("digest", value ?? "missing", "64 hexadecimal digits", "Compute the SHA-256 of the file's bytes.");
}
