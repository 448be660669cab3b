using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What a cure may not spoil of a car as it stands: its damping, its coils, and what is left to its stops.</summary>
public sealed record CureStance
{
    /// <summary>
    /// Acceleration below which no cure may have a car meet a stop in braking, accelerating or cornering where it did not, m/s²: 0.5 g. Common
    /// practice, no source.
    /// </summary>
    public static readonly double LeastFirstStop = In.StandardGravities.ToSi(0.5);

    // As printed: a hundredth of a g.
    private const int Digits = 2;

    private const double Rounding = 1e-6;

    private readonly CarAtRest rest;
    private readonly CoilStanding?[] coils;
    private readonly bool[] touched;
    private readonly double[] left;

    private CureStance(RideModel model)
    {
        rest = new CarAtRest(model);
        coils = [CoilStanding.Of(model, AxleEnd.Front), CoilStanding.Of(model, AxleEnd.Rear)];
        var trim = model.Trim;
        left = [.. Enumerable.Range(0, 4).SelectMany(i => new[] { trim.BumpLeft[i], trim.ReboundLeft[i] })];
        touched = [.. left.Select(travel => travel <= 0.0)];
        Braking = rest.SideEffects.Braking.FirstStop?.Acceleration ?? double.PositiveInfinity;
        Accelerating = rest.SideEffects.Driving.FirstStop?.Acceleration ?? double.PositiveInfinity;
        Cornering = InABend(model);
    }

    /// <summary>Braking at which a stop is first met, by the slope at rest, m/s²; 0 where one is pressed standing, infinite above 1 g.</summary>
    public double Braking { get; }

    /// <summary>Acceleration at which a stop is first met, m/s²; infinite where it is above 1 g.</summary>
    public double Accelerating { get; }

    /// <summary>Steady lateral acceleration at which a stop is first met, m/s²; infinite where it is above 1 g, and without a roll axis.</summary>
    public double Cornering { get; }

    /// <summary>What each of the three is called, with its value.</summary>
    public IReadOnlyList<(string Doing, double At)> FirstStops =>
        [("braking", Braking), ("accelerating", Accelerating), ("cornering", Cornering)];

    /// <summary>Of a car under its load.</summary>
    public static CureStance Of(RideModel model) => new(model ?? throw new ArgumentNullException(nameof(model)));

    /// <summary>
    /// By how much the stops that a car before stood on, and this one does not, are clear, m: the least of them; null where there is none.
    /// </summary>
    /// <param name="before">The car before, under the same load.</param>
    internal double? FreeBy(CureStance before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return left.Where((_, k) => before.touched[k] && !touched[k]).Select(travel => (double?)travel).Min();
    }

    /// <summary>A value of <see cref="FirstStops"/> as it is printed.</summary>
    public static string Print(double at) => double.IsFinite(at) ? $"{Numeral.Of(In.StandardGravities.Of(at), Digits)} g" : "more than 1 g";

    /// <summary>What standing so does that the car before did not do as much, and that no cure may do.</summary>
    /// <param name="before">The car before, under the same load.</param>
    public CureBreach Breach(CureStance before) => Found(before).Breach;

    /// <summary>The same with what it is of and how much, in words; null where it is nothing.</summary>
    /// <param name="before">The car before, under the same load.</param>
    internal (CureBreach Breach, string? Of) Found(CureStance before) =>
        All(before ?? throw new ArgumentNullException(nameof(before))).FirstOrDefault((CureBreach.None, null));

    /// <summary>Each thing of that kind once.</summary>
    /// <param name="before">The car before, under the same load.</param>
    public IEnumerable<CureBreach> Breaches(CureStance before) =>
        All(before ?? throw new ArgumentNullException(nameof(before))).Select(one => one.Breach).Distinct();

    /// <summary>All of it, with what it is of and how much.</summary>
    /// <param name="before">The car before, under the same load.</param>
    internal IEnumerable<(CureBreach Breach, string? Of)> All(CureStance before)
    {
        if (CureGuard.Undamped(before.rest, rest) is { } end)
        {
            yield return (CureBreach.Damping, $"the {CornerNames.Of(end)} one from {Ratio(before, end)} to {Ratio(this, end)}");
        }

        for (var axle = 0; axle < coils.Length; axle++)
        {
            if (before.coils[axle] is not { } was || coils[axle] is not { } now)
            {
                continue;
            }

            // Coils that touch while the stop still gives end the travel metal to metal.
            if (CoilTrouble.Block(now) is not null && (CoilTrouble.Block(was) is null || Left(now) < Left(was) - Rounding))
            {
                yield return (CureBreach.Coils, $"a {CornerNames.Of(now.End)} one");
            }

            if (now.ComesLoose && now.LooseBy > was.LooseBy + Rounding)
            {
                yield return (CureBreach.Loose, $"a {CornerNames.Of(now.End)} one with the wheels hanging");
            }
        }

        if (Enumerable.Range(0, left.Length).Where(k => touched[k] && !before.touched[k]).Select(k => (int?)k).FirstOrDefault() is { } stop)
        {
            yield return (CureBreach.FirstStop,
                $"standing, the {CornerNames.Of((AxleEnd)(stop / 4))} {(stop % 2 == 0 ? "bump" : "rebound")} stop");
        }

        foreach (var ((doing, now), (_, was)) in FirstStops.Zip(before.FirstStops))
        {
            if (IsSooner(was, now))
            {
                yield return (CureBreach.FirstStop, $"{doing} {Print(was)} → {Print(now)}");
            }
        }
    }

    private static string Ratio(CureStance stance, AxleEnd end) => Numeral.Of(stance.rest.DampingRatio(end), 3);

    private static bool IsSooner(double was, double now)
    {
        static double Printed(double at) => Math.Round(In.StandardGravities.Of(at), Digits);
        // A stop that is pressed standing was met at nothing: none is met sooner.
        return Printed(now) < Math.Min(Printed(LeastFirstStop), Printed(was));
    }

    private static double Left(CoilStanding coil) => coil.BlockPastFullBump ?? coil.Block ?? double.PositiveInfinity;

    // Left and right: the car may be laden to one side.
    private static double InABend(RideModel model)
    {
        if (!model.Rolls || model.Car.Body.RollAxisHeight is null)
        {
            return double.PositiveInfinity;
        }

        var suspension = SuspensionRates.LineOpen(model) ?? model.Tangent.SuspensionRate;
        return new[] { -Gravity.Standard, Gravity.Standard }.Min(lateral =>
        {
            var at = StaticTangent.Solve(model, suspension, StaticPush.Of(model, 0.0, lateral));
            double[] travel =
                [.. Enumerable.Range(0, 4).Select(i => at[3 + i] - at[0] + (model.X[i] * at[1]) - (model.Y[i] * at[2]))];
            return StopContact.Of(model, travel)?.Acceleration ?? double.PositiveInfinity;
        });
    }
}
