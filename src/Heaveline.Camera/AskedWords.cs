using System.Globalization;
using Heaveline.Films;

namespace Heaveline.Camera;

/// <summary>The words of a command line: what is asked, of which file, and what was said beside.</summary>
internal sealed class AskedWords
{
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

    /// <summary>A number, or what is usual.</summary>
    public double Number(string key, double usual) => Text(key) is null ? usual : Numbers(key, 1)[0];

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
        Time = Numbers("--at", 1)[0],
        Front = Point("--front"),
        Rear = Point("--rear"),
        BoxFrom = Numbers("--box", 4) is var from ? new PicturePoint(from[0], from[1]) : default,
        BoxTo = Numbers("--box", 4) is var to ? new PicturePoint(to[2], to[3]) : default,
    };
}
