using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>One crossing in one line: "20 km/h: front 52 mm ± 2 mm, rear at least 62 mm".</summary>
internal static class TiePassText
{
    private const string AtLeast = "at least ";

    private static readonly TiePlace[] Places = [.. Enum.GetValues<TiePlace>().OrderByDescending(p => TiePlaces.Words(p).Length)];

    /// <summary>The pass; null where it was objected to.</summary>
    public static TiePass? Read(AskedReader reader, Choice choice, string words)
    {
        var colon = words.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0)
        {
            reader.Object(choice.Name, $"pass '{words}': write the speed, a colon, then each tie: 20 km/h: front 52 mm, rear 36 mm.");
            return null;
        }

        var speed = reader.Amount<Velocity>(choice, words[..colon].Trim(), "20 km/h");
        var ties = CommaList.Of(words[(colon + 1)..]).Select(part => Tie(reader, choice, part)).ToList();
        return speed is null || ties.Any(t => t is null) ? null : new TiePass { Speed = speed.Value, Readings = [.. ties.OfType<TieReading>()] };
    }

    private static TieReading? Tie(AskedReader reader, Choice choice, string part)
    {
        foreach (var place in Places)
        {
            // "front left", or as the sheet's key has it.
            var words = TiePlaces.Words(place);
            if (part.Length <= words.Length || part[words.Length] != ' ' || part[..words.Length].Replace('-', ' ') != words)
            {
                continue;
            }

            var rest = part[words.Length..].Trim();
            var least = rest.StartsWith(AtLeast, StringComparison.Ordinal);
            return reader.Amount<Length>(choice, least ? rest[AtLeast.Length..] : rest, "52 mm") is { } travel
                ? new TieReading { Place = place, Travel = travel, IsAtLeast = least }
                : null;
        }

        reader.Object(choice.Name, $"tie '{part}': it begins with one of {string.Join(", ", Enum.GetValues<TiePlace>().Select(TiePlaces.Words))}.");
        return null;
    }
}
