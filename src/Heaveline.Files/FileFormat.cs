namespace Heaveline.Files;

/// <summary>
/// A format of files that are read here: how their names end and how long they may be. Garage, upload and commands all ask this list.
/// </summary>
/// <param name="Name">What such a file is, with its article ("a measured profile").</param>
/// <param name="Endings">How names end, in small letters with the point; the first is the usual one.</param>
/// <param name="MostBytes">Most bytes that are read.</param>
public sealed record FileFormat(string Name, IReadOnlyList<string> Endings, int MostBytes)
{
    /// <summary>Most bytes of a text of keys: a car with room to spare.</summary>
    public const int LongestText = 256 * 1024;

    /// <summary>Cars, variants and roads: texts of keys that a person writes.</summary>
    public static FileFormat Described { get; } = new("a car file, a variant or a road", [".yaml", ".yml"], LongestText);

    /// <summary>Heights of a measured road. Ten kilometres at a point each centimetre in two tracks is about 25 MB.</summary>
    public static FileFormat MeasuredProfile { get; } = new("a measured profile", [".csv"], 64 * 1024 * 1024);

    /// <summary>Springs with their prices, a row a spring.</summary>
    public static FileFormat SpringSheet { get; } = new("a sheet of springs", [".csv"], LongestText);

    /// <summary>What a phone or a logger wrote on a drive. An hour at 100 samples a second with six axes is 40 to 60 MB of text.</summary>
    public static FileFormat DriveLog { get; } = new("a log of a drive", [".csv", ".txt", ".tsv", ".log", ".zip"], 64 * 1024 * 1024);

    /// <summary>The kept track of a film. A minute at 240 frames a second is 4 MB.</summary>
    public static FileFormat FilmTrack { get; } = new("the track of a film", [".csv"], 16 * 1024 * 1024);

    /// <summary>A film as phones and cameras write it; most of them weigh far less.</summary>
    public static FileFormat Film { get; } = new("a film", [".mp4", ".mov", ".m4v", ".mkv", ".avi", ".webm"], 2_000_000_000);

    /// <summary>The endings in a sentence: ".yaml or .yml".</summary>
    public string EndingWords => string.Join(" or ", Endings);

    /// <summary>Whether a file's name ends as one of this format.</summary>
    public bool Has(string name) => Endings.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase));
}
