namespace Heaveline.Press.Type;

/// <summary>Text broken into lines of a width, between words; a line break in the text stays one.</summary>
internal static class Wrapped
{
    private static readonly HashSet<string> Units =
    [
        "mm", "cm", "m", "km", "km/h", "mph", "m/s", "m/s²", "s", "ms", "Hz", "kg", "N", "kN", "N/mm", "kN/m", "N·s/m", "Nm", "N·m", "bar", "°", "°C",
        "%", "rad", "rad/s", "rad/s²", "g",
    ];

    /// <summary>The lines. A word wider than the width stands alone on its line and sticks out: nothing is cut.</summary>
    public static string[] Of(string text, Lettering lettering, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n', StringSplitOptions.TrimEntries))
        {
            var line = "";
            foreach (var word in Words(paragraph))
            {
                var longer = line.Length == 0 ? word : line + " " + word;
                if (line.Length > 0 && lettering.WidthOf(longer) > width)
                {
                    lines.Add(line);
                    longer = word;
                }

                line = longer;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }
        }

        return [.. lines];
    }

    // A number and its unit are one word: "40" at the end of a line and "km/h" on the next is hard to read.
    private static List<string> Words(string paragraph)
    {
        var words = new List<string>();
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && char.IsAsciiDigit(words[^1][^1]) && Units.Contains(word.TrimEnd('.', ',', ';', ':', ')')))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    /// <summary>Width of the widest line, points.</summary>
    public static double WidthOf(IEnumerable<string> lines, Lettering lettering) => lines.Select(lettering.WidthOf).DefaultIfEmpty(0.0).Max();
}
