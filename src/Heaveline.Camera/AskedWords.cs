using System.Globalization;
using Heaveline.Films;

namespace Heaveline.Camera;

/// <summary>The words of a command line: what is asked, of which file, and what was said beside.</summary>
internal sealed class AskedWords
{
    // A day, s.
    private const double LongestFilm = 86400.0;

    private readonly Dictionary<string, string> said = new(StringComparer.Ordinal);

    private AskedWords(string command, string file) => (Command, File) = (command, file);

    /// <summary>What is asked.</summary>
    public string Command { get; }

    /// <summary>Of which file.</summary>
    public string File { get; }

    /// <summary>Reads them.</summary>
    /// <exception cref="FormatException">They are not understood; the message says which.</exception>
    public static AskedWords Of(string[] args, Func<string, string[]> known)
    {
        if (args is not [var command, var file, .. var rest])
        {
            throw new FormatException("Say what is asked, and of which file.");
        }

        var words = new AskedWords(command, file);
        var keys = known(command);
        for (var i = 0; i < rest.Length; i += 2)
        {
            if (!keys.Contains(rest[i]))
            {
                throw new FormatException($"'{rest[i]}' is no option of {command}; there are {string.Join(", ", keys)}.");
            }

            words.said[rest[i]] = i + 1 < rest.Length ? rest[i + 1] : throw new FormatException($"{rest[i]} wants a value.");
        }

        return words;
    }

    /// <summary>Words beside, or null.</summary>
    public string? Text(string key) => said.GetValueOrDefault(key);

    /// <summary>Words beside that must be there.</summary>
    public string Needed(string key) => Text(key) ?? throw new FormatException($"{Command} wants {key}.");

    /// <summary>A number within bounds, or what is usual.</summary>
    public double Number(string key, double usual, double least, double most) => Text(key) is null ? usual
        : Numbers(key, 1)[0] is var number && number >= least && number <= most ? number
        : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"{key} is {Text(key)}; it must be {least} to {most}."));

    /// <summary>The time of a frame that must be there, s after the first.</summary>
    public double Time => Numbers("--at", 1)[0] is var time && time is >= 0.0 and <= LongestFilm ? time
        : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"--at is {Text("--at")}; it must be 0 to {LongestFilm} s."));

    /// <summary>Where a file is to be written.</summary>
    /// <param name="ending">What its name must end in.</param>
    public string To(string ending) => Needed("--to") is var to && to.EndsWith(ending, StringComparison.OrdinalIgnoreCase) ? to
        : throw new FormatException($"--to is {to}; its name must end in {ending}.");

    /// <summary>A box that must be there: its upper left and its lower right corner, px.</summary>
    public (PicturePoint From, PicturePoint To) Box =>
        Numbers("--box", 4) is [var left, var top, var right, var bottom] && left < right && top < bottom
        ? (new PicturePoint(left, top), new PicturePoint(right, bottom))
        : throw new FormatException($"--box is {Text("--box")}; it must be X,Y of the upper left corner and X,Y of the lower right one.");

    /// <summary>A point of the picture that must be there, px.</summary>
    public PicturePoint Point(string key) => Numbers(key, 2) is [var x, var y] ? new PicturePoint(x, y) : default;

    /// <summary>Numbers that must be there, parted by commas.</summary>
    public double[] Numbers(string key, int count)
    {
        var parts = Needed(key).Split(',');
        var numbers = new double[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            if (!double.TryParse(parts[i], NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[i]) || !double.IsFinite(numbers[i]))
            {
                throw new FormatException($"'{parts[i]}' of {key} is no number.");
            }
        }

        return numbers.Length == count ? numbers : throw new FormatException($"{key} wants {count} numbers, parted by commas.");
    }

    /// <summary>What is marked on a frame.</summary>
    public FilmMarks Marks() => new()
    {
        Time = Time,
        Front = Point("--front"),
        Rear = Point("--rear"),
        BoxFrom = Box.From,
        BoxTo = Box.To,
    };
}
