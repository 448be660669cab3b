namespace Heaveline.Answers;

/// <summary>A file that an answer was computed from, by its digest alone: a log is too long to print, and need not be a text.</summary>
public sealed record InputDigest
{
    /// <summary>Its name: as whoever found it calls its file; in a report as the command there calls it.</summary>
    public required string Name { get; init => field = Quantities.Checked.NotBlank(value, "Name the file."); }

    /// <summary>SHA-256 of its bytes (FIPS 180-4), 64 hexadecimal digits, small letters.</summary>
    public required string Sha256 { get; init => field = InputText.Digest(value); }
}
