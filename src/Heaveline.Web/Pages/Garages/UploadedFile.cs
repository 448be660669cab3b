using System.Text;
using Heaveline.Files;
using Heaveline.Files.Garages;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Garages;

/// <summary>A file that a reader brings into the garage: looked at before anything of it is written.</summary>
/// <param name="Outcome">What came of it; null when it was refused before it could be saved.</param>
/// <param name="Message">Why it was not taken, with what to do; empty when it was.</param>
internal sealed record UploadedFile(SaveOutcome? Outcome, string Message)
{
    /// <summary>What may be brought in.</summary>
    public static FileFormat Format => FileFormat.Described;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Why a file is not even read, from what the browser says of it; null when it may be.</summary>
    public static string? Refused(string name, long bytes) =>
        FileFormat.Film.Has(name) ? "The file looks like a film. The page of the film brings it in."
        : bytes > Format.MostBytes
            ? $"The file has {bytes} bytes; it must have {Format.MostBytes} or fewer. Measured data go into files of their own."
        : name.Contains('/', StringComparison.Ordinal) || name.Contains('\\', StringComparison.Ordinal)
            ? "The file's name holds a folder. Give a name alone, such as fern-estate.yaml."
        : FileFormat.DriveLog.Has(name) ? "The file looks like the log of a drive: the page of the drive brings it in. "
            + "A price sheet of springs you lay into the garage's folder."
        : !Format.Has(name) ? $"The file's name must end in {Format.EndingWords}; other kinds are not read."
        : FileName.Problem(name);

    /// <summary>Puts a file into the garage under its own name, if it is a car, a variant or a road and no file has that name.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="name">The file's name as the browser gave it.</param>
    /// <param name="bytes">All its bytes.</param>
    public static UploadedFile Into(Garage garage, string name, byte[] bytes)
    {
        if (Refused(name, bytes.Length) is { } words)
        {
            return new UploadedFile(null, words);
        }

        string text;
        try
        {
            text = Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return new UploadedFile(null, "The file is not UTF-8 text. Save it as plain text in UTF-8.");
        }

        // Values may be refused and put right later; a text that is not sound as a whole may not.
        if (YamlReading.Value(new SourceText(name, text)) is { Value: null, Refusals: [var first, ..] })
        {
            return new UploadedFile(null, $"Line {first.Line}: {first.Message} {first.Advice}");
        }

        var outcome = garage.Save(name, text, null);
        return outcome.End switch
        {
            SaveEnd.Saved => new UploadedFile(outcome, ""),
            SaveEnd.Conflict =>
                new UploadedFile(outcome, $"There is a file {name} in the garage already, and it is left as it is. Give yours another name first."),
            _ => new UploadedFile(outcome, $"{outcome.Message} {outcome.Advice}"),
        };
    }
}
