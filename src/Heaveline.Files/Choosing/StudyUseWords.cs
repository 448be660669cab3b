using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Files.Choosing;

/// <summary>The words for what a study drives over.</summary>
internal static class StudyUseWords
{
    /// <summary>An obstacle.</summary>
    public static readonly Key<string> Road = Key.Optional(
        "road", "An obstacle: a road that comes with Heaveline by its name, or a road file, relative to this file.", Kind.Text(), "village-hump");

    /// <summary>The class of a random road.</summary>
    public static readonly Key<string> Class = Key.Optional(
        "class",
        "Class of the random road of the ride, A to H (ISO 8608), A the smoothest; once in a study.",
        Kind.Choice([.. "ABCDEFGH".Select(letter => (letter.ToString(), letter.ToString()))]),
        "C");

    /// <summary>Speeds.</summary>
    public static readonly Key<IReadOnlyList<Amount<Velocity>>> Speeds = Key.Required(
        "speeds", "Speeds at which it is driven over.", Kind.List(Kind.Amount<Velocity>("km/h")), "[25 km/h, 40 km/h]");

    /// <summary>Loads.</summary>
    public static readonly Key<IReadOnlyList<string>> Loads = Key.Optional(
        "loads",
        "Loads with which it counts, of those that count at all; all of them when left out. With the others it is looked at all the same.",
        Kind.List(Kind.Text()),
        "[driver]");

    /// <summary>Weight.</summary>
    public static readonly Key<double> Weight = Key.Optional(
        "weight",
        "What an obstacle weighs beside the others, a plain number; 1 when left out.",
        Kind.Phrase("a weight, a plain number such as 2 or 0.5", @"^\s*[0-9]+(\.[0-9]+)?\s*$", ReadWeight),
        "2");

    /// <summary>The group.</summary>
    public static readonly Shape<ChooseUseLine> Shape = new Shape(
        "use", "An obstacle or a random road, and how it is driven over.", Road, Class, Speeds, Loads, Weight).WithOneOf(Road, Class).As(Make);

    /// <summary>The line of a document's group.</summary>
    public static ChooseUseLine LineOf(Node use) => new(
        use.At(Road.Name)?.Text.Trim() ?? ChooseUseLine.NameOf(use.At(Class.Name)!.Text.Trim()),
        [.. use.At(Speeds.Name)!.Items.Select(speed => speed.Text.Trim())])
    {
        Loads = [.. (use.At(Loads.Name)?.Items ?? []).Select(load => load.Text.Trim())],
        Weight = use.At(Weight.Name)?.Text.Trim(),
    };

    private static ChooseUseLine? Make(Fields f)
    {
        if (f.Has(Class) && f.Has(Weight))
        {
            f.Refuse(Weight, "is given to a random road: the ride is never added to what obstacles do.", "Leave it out.");
            return null;
        }

        if (f.Optional(Road) is { } road && road.AsSpan().IndexOfAny(';', '\'') >= 0)
        {
            f.Refuse(Road, "has a semicolon or a quote in its name.", "Give the file another name.");
            return null;
        }

        foreach (var load in f.Optional(Loads) ?? [])
        {
            if (load.AsSpan().IndexOfAny(',', ';') >= 0)
            {
                f.Refuse(Loads, $"name \"{load}\", which has a comma or a semicolon.", "Give the load another name in the car file.");
                return null;
            }
        }

        return new ChooseUseLine(f.Optional(Road) ?? ChooseUseLine.NameOf(f.Optional(Class)!), []);
    }

    private static (double Value, QuantityRefusal? Refusal) ReadWeight(string text) => ChooseUseLine.WeightOf(text.Trim()) is { } weight
        ? (weight, null)
        : (0.0, new QuantityRefusal(
            0,
            Math.Max(1, text.Length),
            $"\"{text}\" is no weight; it must be between 0.001 and 1000.",
            "Write a plain number with a decimal point."));
}
