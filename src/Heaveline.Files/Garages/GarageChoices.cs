using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Garages;

/// <summary>
/// What a garage remembers of whoever works in it, in a file of its folder that a person can write too: <c>units: imperial</c> in
/// <c>garage.yaml</c>.
/// </summary>
public static class GarageChoices
{
    /// <summary>The file's name.</summary>
    public const string Name = "garage.yaml";

    private const string UnitsKey = "units";

    private static Reading<ReaderUnits> Usual { get; } = new() { Value = ReaderUnits.Metric, Sources = [] };

    /// <summary>The units that a folder remembers; metric where it remembers none.</summary>
    /// <param name="folder">The folder. It need not be a garage.</param>
    /// <returns>The units, or why the file cannot be read as a choice of them.</returns>
    public static Reading<ReaderUnits> Units(string folder)
    {
        var path = Path.Combine(folder, Name);
        if (!File.Exists(path))
        {
            return Usual;
        }

        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        if (refusal is not null)
        {
            return Reading<ReaderUnits>.Refused(source, refusal);
        }

        // A car may bear that name; it remembers nothing.
        var reading = YamlReading.Value(source);
        return reading.Root is null ? new Reading<ReaderUnits> { Value = null, Refusals = reading.Refusals, Sources = [source] }
            : !IsOf(reading.Root) ? Usual
            : Read(source, reading.Root.At(UnitsKey)!);
    }

    /// <summary>Remembers units in a garage.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="units">The units.</param>
    /// <returns>What came of it: nothing is written over that is no such file.</returns>
    public static SaveOutcome Remember(Garage garage, ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(units);
        var present = garage.Read(Name);
        var text = $"# What this garage remembers of how it is read.\n{UnitsKey}: {units.Word}\n";
        return present.Text is { } other && (YamlReading.Value(new SourceText(Name, other)).Root is not { } root || !IsOf(root))
            ? new SaveOutcome
            {
                End = SaveEnd.NameRefused,
                Name = Name,
                Text = text,
                Message = $"{Name} is another file already.",
                Advice = "Give that file another name; the garage remembers its choices under this one.",
            }
            : garage.Save(Name, text, present.Stamp);
    }

    /// <summary>Why no other file can have a name, in words; null when it can, as far as this goes.</summary>
    /// <param name="file">The name, with its folders.</param>
    public static string? Reserved(string file) => Path.GetFileName(file).Equals(Name, StringComparison.OrdinalIgnoreCase)
        ? $"In {Name} the garage remembers how it is read: no other file can have that name. Take another."
        : null;

    /// <summary>Whether a document is one of choices.</summary>
    internal static bool IsOf(Node root) =>
        root.At(UnitsKey) is not null && root.At("car") is null && root.At("variant") is null && root.At("road") is null;

    private static Reading<ReaderUnits> Read(SourceText source, Node units) => ReaderUnits.Words.Contains(units.Text.Trim())
        ? new Reading<ReaderUnits> { Value = ReaderUnits.Of(units.Text.Trim()), Sources = [source] }
        : Reading<ReaderUnits>.Refused(source, new Refusal(
            source.File,
            units.Place.Line,
            units.Place.Column,
            units.Place.Length,
            $"{UnitsKey} is {(units.Text.Length > 0 ? $"'{units.Text}'" : "no word")}; it must be {string.Join(" or ", ReaderUnits.Words)}.",
            "Correct it, or delete the file: the usual units are metric."));
}
