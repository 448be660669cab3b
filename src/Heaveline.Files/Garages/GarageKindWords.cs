namespace Heaveline.Files.Garages;

/// <summary>What kinds of files of a garage are called.</summary>
public static class GarageKindWords
{
    /// <summary>The kind in a word or two: "car", "cable ties".</summary>
    public static string Of(GarageKind kind) => kind switch
    {
        GarageKind.Car => "car",
        GarageKind.Variant => "variant",
        GarageKind.Road => "road",
        GarageKind.Drive => "drive",
        GarageKind.Film => "film",
        GarageKind.Ties => "cable ties",
        GarageKind.Parts => "list of parts",
        GarageKind.Study => "study of what to buy",
        GarageKind.Crew => "crew",
        GarageKind.Choices => "choices of the garage",
        _ => "unknown file",
    };

    /// <summary>Several of a kind: "cars", "lists of parts".</summary>
    /// <param name="words">The kind in a word or two.</param>
    public static string Several(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var of = words.IndexOf(" of ", StringComparison.Ordinal);
        var (what, rest) = of < 0 ? (words, "") : (words[..of], words[of..]);
        return (what.EndsWith('s') ? what : what.EndsWith('y') ? what[..^1] + "ies" : what + "s") + rest;
    }
}
