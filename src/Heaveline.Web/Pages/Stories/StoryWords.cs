using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Pages.Passes;

namespace Heaveline.Web.Pages.Stories;

/// <summary>The story in sentences, each with the numbers of the passes behind it.</summary>
/// <param name="Cars">The cars.</param>
/// <param name="Passes">Both cars over the road: as built and cured under the light load, then under the heavy one.</param>
internal sealed record StoryWords(StoryCars Cars, IReadOnlyList<PassAnswer> Passes)
{
    // Less than this is nothing that anybody would feel (judged by eye, as on the page of the pass).
    private const double Felt = 0.03;

    private static readonly Measure<Pass> Nod = PassCatalogue.PitchOver(StoryCars.Road)[0];
    private static readonly Measure<Pass> Hit = PassCatalogue.PitchOver(StoryCars.Road)[1];

    private PassAnswer Light => Passes[0];

    private PassAnswer LightCured => Passes[1];

    private PassAnswer Loaded => Passes[2];

    private PassAnswer LoadedCured => Passes[3];

    /// <summary>The finding.</summary>
    public string Headline =>
        $"Loaded, this saloon nods by {Says(Nod, Loaded)} after a hump; with other springs and dampers by {Says(Nod, LoadedCured)}.";

    /// <summary>What was driven.</summary>
    public string Driven =>
        $"{Cars.Built.Name}, an invented car, over {StoryCars.Road.Caption}, at {Printed.Speed(StoryCars.Speed)}. The nodding is its {Nod.Name}.";

    /// <summary>What the load does.</summary>
    public string OfLoad =>
        $"Under the load '{Cars.Light.Name}' it nods by {Says(Nod, Light)}, under '{Cars.Loaded.Name}' by {Says(Nod, Loaded)}. {Stops(Loaded)}";

    /// <summary>What the cure does under the heavy load.</summary>
    public string OfCure =>
        $"{FirstLetter.Raised(Cars.Loaded.Name)}: {FirstLetter.Lowered(PassVerdict.Size(Value(Nod, LoadedCured) / Value(Nod, Loaded)))}, "
        + $"{Says(Nod, Loaded)} to {Says(Nod, LoadedCured)}; the {Hit.Name} goes from {Says(Hit, Loaded)} to {Says(Hit, LoadedCured)}. "
        + Stops(LoadedCured);

    /// <summary>What the cure does under the light load.</summary>
    public string OfPrice =>
        $"Under the load '{Cars.Light.Name}' the nodding goes from {Says(Nod, Light)} to {Says(Nod, LightCured)}, "
        + (Worse.Count > 0 ? "and this gets worse on the same hump:" : "and nothing that is measured on the hump gets worse.");

    /// <summary>What gets worse then, from what to what.</summary>
    public IReadOnlyList<string> Worse =>
    [
        .. MeasureChange.Of(LightCured, Light).Where(change => change.IsBetter == false && IsFelt(change))
            .Select(change => $"{change.Measure.Label}: {change.PrintWithUnit(change.Before)} to {change.PrintWithUnit(change.After)}"),
    ];

    /// <summary>The four passes side by side, by what matters most.</summary>
    public FactTable Table
    {
        get
        {
            var table = CompareAnswer.Table(Printed.Speed(StoryCars.Speed), Passes);
            return table.Only(PassCatalogue.For(Loaded.Model, StoryCars.Road, MeasureUse.Short).Select(m => m.Key).ToHashSet(StringComparer.Ordinal));
        }
    }

    private static bool IsFelt(MeasureChange change) => !change.IsHardlyAny && change is { Before: { } before, After: { } after }
        && Math.Abs(after - before) >= Felt * Math.Max(Math.Abs(before), double.Epsilon);

    private static double Value(Measure<Pass> measure, PassAnswer of) => measure.ShownOf(of.Pass) ?? double.NaN;

    private static string Says(Measure<Pass> measure, PassAnswer of) => $"{measure.Print(Value(measure, of))}{measure.Unit.Suffix}";

    // Which stops it presses, and by how much: below 0 of the room that is left.
    private static string Stops(PassAnswer of)
    {
        string[] pressed =
        [
            .. from place in WheelPlace.Axles(of.Model.Rolls)
               let room = WheelCatalogue.Of(place).Single(m => m.Key == $"{place.Key}-bump-margin")
               let left = room.ShownOf(of.Pass)
               where left is < 0.0
               select $"the {place.Name} press their bump stops by {room.Print(-left.Value)}{room.Unit.Suffix}",
        ];
        return pressed.Length == 0 ? "No bump stop is touched." : $"{FirstLetter.Raised(string.Join(", ", pressed))}.";
    }
}
