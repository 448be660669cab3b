using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Names that a user gives to bumps of two drives, as "chapel hump: before 84 s, 141 s, after 91 s".</summary>
internal static class ProveSites
{
    private const string Example = "--site \"chapel hump: before 84 s, 141 s, after 91 s\"";

    /// <summary>The names with their instants, of the drive before and of the drive after; what cannot be read is objected to.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="choice">The choice.</param>
    public static (List<(string Site, double At)> Before, List<(string Site, double At)> After) Read(AskedReader reader, Choice choice)
    {
        List<(string Site, double At)> before = [], after = [];
        foreach (var words in reader.Texts(choice))
        {
            var colon = words.IndexOf(':', StringComparison.Ordinal);
            if (colon < 1 || words[..colon].Trim().Length == 0)
            {
                reader.Object(choice.Name, $"'{words}' names no bump; write it as {Example}.");
                continue;
            }

            var name = words[..colon].Trim();
            List<(string Site, double At)>? drive = null;
            foreach (var part in CommaList.Of(words[(colon + 1)..]))
            {
                var instant = part;
                foreach (var (word, list) in new[] { ("before ", before), ("after ", after) })
                {
                    if (part.StartsWith(word, StringComparison.Ordinal))
                    {
                        (drive, instant) = (list, part[word.Length..]);
                    }
                }

                if (drive is null)
                {
                    reader.Object(choice.Name, $"'{words}' does not say of which drive {part} is; write it as {Example}.");
                    break;
                }

                if (reader.Amount<Time>(choice, instant, "84 s") is { Si: var at })
                {
                    drive.Add((name, at));
                }
            }
        }

        return (before, after);
    }
}
