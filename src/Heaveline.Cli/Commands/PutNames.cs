using Heaveline.Cli.Output;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>Finds what a --put names in the lists, and says why it is not to be found.</summary>
internal static class PutNames
{
    /// <summary>The part as it is set.</summary>
    /// <param name="text">The whole text of the option.</param>
    /// <param name="place">Its place.</param>
    /// <param name="name">What stands behind the colon.</param>
    /// <param name="options">All that the lists have.</param>
    /// <exception cref="Stopped">The name is missing, has no setting, is of another kind of part, or is of none.</exception>
    public static PartOption Find(string text, PartPlace place, string name, IReadOnlyList<PartOption> options)
    {
        if (name.Length == 0)
        {
            throw new Stopped(
                $"heaveline: --put '{text}' names no part behind its colon. Write \"{place.Name()}: \" and the part as the list calls it.",
                ExitCode.WrongUsage);
        }

        if (options.FirstOrDefault(option => option.Name == name) is { } found)
        {
            return found.Part.Sort == place.Sort() ? found : throw new Stopped(
                $"heaveline: --put '{text}': {found.Part.Name} is {Word(found.Part.Sort)}; there goes {Word(place.Sort())}.", ExitCode.Refused);
        }

        // A part without how it is set, or with a setting in other words.
        var part = options.Select(option => option.Part).Where(known => IsOf(name, known.Name)).MaxBy(known => known.Name.Length);
        if (part is not null)
        {
            throw new Stopped(
                $"heaveline: --put '{text}': the lists have no {name}, but {Settings(part)}.", ExitCode.Refused);
        }

        var near = NearestWord.Of(name, [.. options.Select(option => option.Name)]) is { } word ? $" Did you mean {word}?" : "";
        throw new Stopped($"heaveline: --put '{text}': the lists have no {name}.{near}", ExitCode.Refused);
    }

    private static bool IsOf(string name, string part) => name.StartsWith(part, StringComparison.OrdinalIgnoreCase)
        && (name.Length == part.Length || !char.IsLetterOrDigit(name[part.Length]));

    private static string Settings(Part part) => part.Options switch
    {
        [{ Click: { } first }, .., { Click: { } last }] =>
            FormattableString.Invariant($"{part.Name} at click {first} to {part.Name} at click {last}"),
        var all => string.Join(", ", all.Select(option => option.Name)),
    };

    private static string Word(PartSort sort) => sort switch
    {
        PartSort.Bar => "an anti-roll bar",
        PartSort.Stop => "a bump stop",
        _ => $"a {sort.ToString().ToLowerInvariant()}",
    };
}
