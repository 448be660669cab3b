using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Where what was written down about drives contradicts what is said of them.</summary>
internal static class DriveCautions
{
    // Places of a phone nearer than this are one, m: nobody lays it down more exactly.
    private const double SamePlace = 0.01;

    // Pressures nearer than this are one, Pa: 0.05 bar, what gauges at filling stations tell apart. Common practice, no source.
    private const double SamePressure = 5e3;

    /// <summary>
    /// Circumstances that both drives have written down and not alike, each a word of <see cref="ProveAsked.Circumstances"/>, with both values.
    /// </summary>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    public static IEnumerable<(string Word, string Says)> Differing(RecordedDrive before, RecordedDrive after)
    {
        if (IsLoadedOtherwise(before, after))
        {
            yield return ("load", Loads(before, after));
        }

        string[] pressures =
        [
            .. Pressure("front", before.FrontPressure, after.FrontPressure),
            .. Pressure("rear", before.RearPressure, after.RearPressure),
        ];
        if (pressures.Length > 0)
        {
            yield return ("pressures", $"{string.Join("; ", pressures)}, {before.Name} before {after.Name}");
        }

        if (before.Settings.Phone is { } one && after.Settings.Phone is { } other
            && (Math.Abs(one.BehindFrontAxle - other.BehindFrontAxle) > SamePlace || Math.Abs(one.Left - other.Left) > SamePlace
                || Math.Abs(one.Up - other.Up) > SamePlace))
        {
            yield return ("phone", $"in {before.Name} it lay {DescribedDrive.Place(one)}, in {after.Name} {DescribedDrive.Place(other)}");
        }
    }

    /// <summary>Whether both drives name their load, and not the same.</summary>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    public static bool IsLoadedOtherwise(RecordedDrive before, RecordedDrive after) =>
        before.Car is { } one && after.Car is { } other && one.Load.Name != other.Load.Name;

    /// <summary>Under which load each was driven, where both name theirs.</summary>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    public static string Loads(RecordedDrive before, RecordedDrive after) =>
        $"{before.Name} was driven {before.Car!.Load.Name}, {after.Name} {after.Car!.Load.Name}";

    /// <summary>Cautions of circumstances that differed, and were perhaps said to be the same.</summary>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    /// <param name="said">Those that were said to be the same.</param>
    public static IEnumerable<string> Of(RecordedDrive before, RecordedDrive after, IReadOnlyCollection<string> said) =>
        Differing(before, after).Select(d => $"Not the same in both drives as written down with them: {d.Word}; {d.Says}."
            + (said.Contains(d.Word) ? " That it was said to be the same is not believed." : ""));

    /// <summary>The caution of a report whose drives were driven by none of its cars; none where one was, or no car is written down.</summary>
    /// <param name="cars">The cars of the report.</param>
    /// <param name="drives">The drives.</param>
    public static IEnumerable<string> OfStrangers(IReadOnlyList<LoadedCar> cars, params IEnumerable<RecordedDrive?> drives)
    {
        string[] driven = [.. drives.Select(d => d?.Car?.Car.Name).OfType<string>().Distinct()];
        return driven.Length == 0 || driven.Any(name => cars.Any(c => c.Name == name || c.Car.Name == name))
            ? []
            : [$"Driven, as written down: {string.Join(", ", driven)}. The report is of another car: {string.Join(", ", cars.Select(c => c.Name))}. "
                + "What this part says is not said of it."];
    }

    private static IEnumerable<string> Pressure(string axle, double? before, double? after) =>
        before is { } one && after is { } other && Math.Abs(one - other) > SamePressure
            ? [FormattableString.Invariant($"{axle} {In.Bar.Of(one):0.00} and {In.Bar.Of(other):0.00} bar")]
            : [];
}
