using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>
/// What each counts of the same ride: the unweighted pitch and head motion that the trade judges by, beside what ISO 2631-1 makes of every axis.
/// </summary>
public static class ComfortCountFigure
{
    // Rounding alone moves a car on a level road by some 1e-13 m/s²; half of people just feel 0.015 m/s² at its peak (ISO
    // 2631-1:1997, annex C, after a public transcription).
    private const double Nothing = 1e-6;

    /// <summary>The figure, page wide: unweighted accelerations, unweighted rotations, weighted contributions with the total.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="comfort">The comfort of one seat in it.</param>
    /// <exception cref="RefusedValueException">Nothing moved.</exception>
    public static Figure Of(Pass pass, PassComfort comfort)
    {
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(comfort);
        if (comfort.Total.Value < Nothing)
        {
            throw new RefusedValueException("ride", "no motion at all", "some motion", "Drive over a road that is not level.");
        }

        return new Figure
        {
            Title =
                $"{FirstLetter.Raised(comfort.Seat.Name)} at {Printed.Speed(pass.Speed)}, {pass.Road.Name}: "
                + "what is felt and what the standard counts",
            AltText = $"Three bar charts of one seat. Unweighted: {Unweighted(comfort)} Weighted by ISO 2631-1: {Counted(comfort)}",
            Caption = Caption(pass, comfort),
            Size = FigureSize.Page,
            Panels = [Accelerations(comfort), Rotations(comfort), Contributions(comfort)],
        };
    }

    private static CategoryPanel Accelerations(PassComfort comfort) => new()
    {
        Title = "Not weighted: accelerations",
        Value = new Axis { Label = "r.m.s.", Unit = "m/s²" },
        Categories =
        [
            Row("head, fore-aft", comfort.HeadForeAftRms, Ink.Second),
            .. comfort.Axes.Where(axis => axis.At.Point == MeasuringPoint.Seat && !axis.At.IsRotation)
                .Reverse().Select(axis => Row(Name(axis.At), axis.UnweightedRms, Ink.First)),
        ],
    };

    private static CategoryPanel Rotations(PassComfort comfort) => new()
    {
        Title = "Not weighted: rotations",
        Value = new Axis { Label = "r.m.s.", Unit = "rad/s²" },
        Categories = [.. comfort.Axes
            .Where(axis => axis.At.IsRotation).Reverse().Select(axis => Row(Name(axis.At), axis.UnweightedRms, InkOf(axis.At)))],
    };

    private static CategoryPanel Contributions(PassComfort comfort) => new()
    {
        Title = "Weighted by ISO 2631-1, times k for comfort",
        Value = new Axis { Label = "k × weighted r.m.s.", Unit = "m/s²" },
        Categories =
        [
            Row("vibration total value", comfort.Total.Value, Ink.Third),
            .. comfort.Axes.Select(axis => Row(Name(axis.At), axis.Rms.ForComfort, InkOf(axis.At))),
        ],
    };

    private static Category Row(string name, double value, Ink ink) =>
        new() { Name = name, Values = [new CategoryValue { Value = value, Ink = ink }] };

    private static Ink InkOf(PointAxis at) => at.Axis == MotionAxis.Pitch ? Ink.Second : Ink.First;

    private static string Name(PointAxis at) => at.Axis switch
    {
        MotionAxis.X => $"{Point(at)}, fore-aft",
        MotionAxis.Y => $"{Point(at)}, lateral",
        MotionAxis.Z => $"{Point(at)}, vertical",
        MotionAxis.Roll => "roll",
        MotionAxis.Pitch => "pitch",
        _ => "yaw",
    };

    private static string Point(PointAxis at) => at.Point.ToString().ToLowerInvariant();

    private static string Caption(Pass pass, PassComfort comfort)
    {
        var error = pass.Statistics.PitchError is { } share
            ? $"Numerical error below {ErrorBound.Percent(share)} of the peak pitch."
            : null;
        string?[] sentences =
        [
            $"{pass.Model.Car.Name}, {pass.Model.Load.Name}, at {Printed.Speed(pass.Speed)}. Road: {pass.RoadCaption}.",
            $"From {Numeral.Of(comfort.Window.From, 1)} to {Numeral.Of(comfort.Window.To, 1)} s.",
            $"Not weighted: {Unweighted(comfort)}",
            $"The standard counts: {Counted(comfort)}",
            comfort.Reactions.Count > 0 ? $"Guide in words: {string.Join(" to ", comfort.Reactions.Select(reaction => reaction.Words))}." : null,
            $"Seat vertical: {Evaluation(comfort)}",
            "The seat, the backrest and the feet move rigidly with the body; fore-aft and lateral hold the tilt's share of gravity.",
            Absent(comfort),
            error,
        ];
        return string.Join(' ', sentences.OfType<string>());
    }

    private static string Unweighted(PassComfort comfort) =>
        $"pitch {Printed.PitchAcceleration(comfort.Pitch.UnweightedRms)}, head fore-aft {Acceleration(comfort.HeadForeAftRms)}, "
        + $"seat vertical {Acceleration(comfort.SeatVertical.UnweightedRms)} r.m.s.";

    private static string Counted(PassComfort comfort) =>
        $"total {Acceleration(comfort.Total.Value)}, of whose square seat vertical makes {Share(comfort, comfort.SeatVertical)} and pitch "
        + $"{Share(comfort, comfort.Pitch)}.";

    private static string Share(PassComfort comfort, AxisComfort axis)
    {
        var share = In.Percent.Of(comfort.ShareOf(axis));
        return share < 0.1 ? "less than 0.1 %" : Numeral.Of(share, share < 10.0 ? 1 : 0) + " %";
    }

    private static string Evaluation(PassComfort comfort) =>
        comfort.IsSingleEvent
            ? $"a single event, to be judged by VDV {Dose(comfort.Recorded)}; the root mean squares hang on their window."
            : $"{comfort.SeatVertical.Evaluation.Words} VDV {Dose(comfort.SeatVertical.Weighted)}.";

    private static string Dose(WeightedAcceleration vertical) =>
        $"{Numeral.Of(vertical.VibrationDose, 2)} m/s^1.75 and MTVV {Acceleration(vertical.LinearMtvv)}";

    private static string? Absent(PassComfort comfort) =>
        comfort.Total.Absent.Count == 0 ? null : $"Not in the model, so not in the total: {string.Join(", ", comfort.Total.Absent.Select(Name))}.";

    private static string Acceleration(double value) => Numeral.Of(value, 2) + " m/s²";
}
