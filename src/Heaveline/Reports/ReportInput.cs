using Heaveline.Quantities;

namespace Heaveline.Reports;

/// <summary>A text that a report was computed from: a car file, a variant, a road.</summary>
public sealed record ReportInput
{
    private const int DigestLength = 64;

    /// <summary>Its name, as the command in the report calls it.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Name the text."); }

    /// <summary>The whole text.</summary>
    public required string Text { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>SHA-256 of its bytes as they lie in the file (FIPS 180-4), 64 hexadecimal digits, small letters.</summary>
    public required string Sha256
    {
        get;
        init => field = value is { Length: DigestLength } && value.All(c => char.IsAsciiDigit(c) || c is >= 'a' and <= 'f')
            ? value
            : throw new RefusedValueException("digest", value ?? "missing", "64 hexadecimal digits", "Compute the SHA-256 of the file's bytes.");
    }

    /// <summary>Whether it comes with the program, so that nobody needs to save it.</summary>
    public bool BuiltIn { get; init; }
}
