using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Parts;

/// <summary>
/// Why a part does not fit its place. Words are made when they are asked for: of a million setups most are only counted.
/// </summary>
/// <param name="Place">The place.</param>
/// <param name="Part">The part as it is set.</param>
/// <param name="Kind">The reason.</param>
/// <param name="Value">What it has, SI: travels are the wheel's, in m from the state weighed; NaN where the reason is no number.</param>
/// <param name="Limit">What it would need, in the same unit; NaN where the reason is no number.</param>
public sealed record Misfit(PartPlace Place, string Part, MisfitKind Kind, double Value, double Limit) : FittingResult
{
    private string End => Place.End() is { } end ? end.ToString().ToLowerInvariant() : "";

    /// <summary>What does not fit, a sentence.</summary>
    public string Words => $"{Part} does not fit as {Place.Name()}: {Reason}.";

    /// <summary>The value and its limit in words, without the part and without a full stop.</summary>
    public string Reason => Kind switch
    {
        MisfitKind.OtherPlace => "it is not sold for that place",
        MisfitKind.NoCoilSeats =>
            "what stands there is described by its rate at the wheel, a torsion bar or leaves, which says nothing of a coil's seats",
        MisfitKind.SeatDiameter => Text($"its ends are {Mm(Value)} mm wide inside, the seats take {Mm(Limit)} mm"),
        MisfitKind.NowhereToPack => "packing has nothing to count from: a length of it, or of the spring weighed, is not known",
        MisfitKind.CannotCarry => Text($"its table ends flat at {Value:F0} N, and {Limit:F0} N stand on it"),
        MisfitKind.CoilsTouch => Text($"its coils touch at {Mm(Value)} mm of bump travel from the state weighed, {Between} mm before the ")
            + Text($"bump stop ends it at {Mm(Limit)} mm"),
        MisfitKind.WireStress => Text($"its wire has {In.Megapascals.Of(Value):0.#} MPa of shear at full bump, ")
            + Text($"its maker allows {In.Megapascals.Of(Limit):0.#} MPa"),
        MisfitKind.LooseSpring =>
            Text($"it reaches {Mm(-Value)} mm down at the wheel from the state weighed, and with the car on stands the ")
            + Text($"wheel hangs {Mm(-Limit)} mm down: it falls out of its seat"),
        MisfitKind.NoDamperRatio =>
            "the dampers that are there are described by a damping ratio, which does not say how far one moves with its wheel",
        MisfitKind.ShortStroke => Text($"its stroke is {Mm(Value)} mm, and from full droop to full bump the dampers there move {Mm(Limit)} mm"),
        MisfitKind.NoBar => "a two-wheeler has no anti-roll bar",
        MisfitKind.NoStop => $"no {End} bump stop is described, so that nobody knows where another one would touch",
        MisfitKind.StopTouches => Text($"it would touch {Mm(-Value)} mm of wheel travel below where the car stood on the scales"),
        MisfitKind.UnsprungMass => Text($"it leaves {Value:F1} kg of unsprung mass on the axle"),
        MisfitKind.LinkCarries => "the interconnection that is there carries a force as the car was weighed, and the springs do not say what they "
            + "would carry without it",
        _ => throw new InvalidOperationException($"A misfit {Kind} has no words."),
    };

    /// <summary>What to do instead, one sentence.</summary>
    public string Advice => Kind switch
    {
        MisfitKind.OtherPlace => "Choose a part for the place, or leave its fits out where it goes there too.",
        MisfitKind.NoCoilSeats => "Describe the coil that was weighed by its rate or its wire, and how far it moves with its wheel.",
        MisfitKind.SeatDiameter => "Take a spring of the seats' diameter.",
        MisfitKind.NowhereToPack => "Measure the free lengths of both springs, or leave the packing out.",
        MisfitKind.CannotCarry => "Take a stiffer spring, or measure this one further.",
        MisfitKind.CoilsTouch =>
            "The travel ends there, metal to metal: take a spring of a shorter block length, or a stop that ends the travel sooner.",
        MisfitKind.WireStress => "Take a spring of thicker wire, or a stop that ends the travel sooner.",
        MisfitKind.LooseSpring =>
            Text($"It needs a helper spring, or a strap that ends the droop at least {Math.Ceiling(In.Millimetres.Of(Value - Limit)):F0} mm sooner ")
            + "at the wheel; do not drive on it without one.",
        MisfitKind.NoDamperRatio when Place.Sort() == PartSort.Stop =>
            $"Give the stop its stop-per-wheel in the list of parts, or write in the car file, under {End}: damper:, bump and rebound and moves "
            + "in the place of damping-ratio.",
        MisfitKind.NoDamperRatio => $"Write in the car file, under {End}: damper:, its tables bump and rebound and how far it moves with its wheel "
            + "(moves) in the place of damping-ratio.",
        MisfitKind.ShortStroke => "It would end the travel itself, metal to metal: take a longer one.",
        MisfitKind.NoBar => "Leave the bar out.",
        MisfitKind.NoStop => $"Write in the car file, under {End}: bump-stop:, the clearance and rate of the one that is there, its length too.",
        MisfitKind.StopTouches => "Take a shorter stop, or cut it.",
        MisfitKind.UnsprungMass => "Check what the tyre weighs more or less, and the unsprung mass of the axle.",
        MisfitKind.LinkCarries => "Weigh the car again without it.",
        _ => throw new InvalidOperationException($"A misfit {Kind} has no advice."),
    };

    // Of the numbers as they are printed, so that the sentence adds up.
    private string Between => Numeral.Of(Math.Round(In.Millimetres.Of(Limit), 1) - Math.Round(In.Millimetres.Of(Value), 1), "0.#");

    private static string Mm(double length) => Numeral.Of(In.Millimetres.Of(length), "0.#");
}
