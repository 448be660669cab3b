using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What stands under a figure of one pass, written from its numbers.</summary>
internal static class PassCaption
{
    /// <summary>Car, load, speed, road; the headline; the peaks; stops and lift-off; how far to trust it.</summary>
    public static string Of(Pass pass, PassMeasures measures)
    {
        string?[] sentences =
        [
            $"{pass.Model.Car.Name}, {pass.Model.Load.Name}, at {Printed.Speed(pass.Speed)}. Road: {pass.RoadCaption}.",
            pass.Outcome == PassOutcome.Completed ? null : $"The run stopped early. {pass.OutcomeSentence}",
            Headlines(pass),
            pass.Road.Event is null ? null : EventBands.Meaning,
            Stops(measures),
            LiftOff(measures),
            pass.Statistics.PitchError is { } error ? $"Numerical error below {ErrorBound.Percent(error)} of the peak pitch." : null,
        ];
        return string.Join(' ', sentences.OfType<string>());
    }

    /// <summary>What one would see, for a reader who cannot.</summary>
    public static string AltText(Pass pass, PassMeasures measures, int panels) =>
        $"{panels} charts over one time axis of {pass.Model.Car.Name} crossing a road at {Printed.Speed(pass.Speed)}: "
        + "the road under the wheels, body heights over both axles, pitch, pitch acceleration, "
        + $"{(measures.PeakRoll > 0.0 && pass.Model.Rolls ? "roll where it matters, " : "")}wheel travel with its stops"
        + $"{(pass.Road.Event is null ? "" : "; hit and settling are shaded")}. {Headlines(pass)}";

    private static string Headlines(Pass pass)
    {
        var measure = Headline.RmsPitch(pass);
        var rms = $"{measure.CaptionLabel}: {(Headline.Of(measure, pass) is { } angle ? Printed.Degrees(angle) : "not recorded to its end")}.";
        return Headline.Of(Headline.PeakAngle(pass), pass) is { } peak && Headline.Of(Headline.PeakAcceleration(pass), pass) is { } acceleration
            ? $"{rms} Peaks {Headline.PeakWords(pass)}: {Printed.Degrees(peak)} and {Printed.PitchAcceleration(acceleration)}."
            : rms;
    }

    private static string? Stops(PassMeasures measures)
    {
        string[] touched =
        [
            .. from wheel in measures.Wheels
               from stop in new[] { (Name: "bump", Times: wheel.BumpContacts), (Name: "rebound", Times: wheel.ReboundContacts) }
               where stop.Times > 0
               select $"{wheel.Wheel} {stop.Name} stop {Times(stop.Times)}",
        ];
        return touched.Length == 0 ? null : $"Touched: {string.Join(", ", touched)}.";
    }

    private static string? LiftOff(PassMeasures measures)
    {
        string[] off =
        [
            .. from wheel in measures.Wheels
            where wheel.LiftOff > 0.0
            select $"{wheel.Wheel} {Numeral.Of(In.Milliseconds.Of(wheel.LiftOff), 0)} ms",
        ];
        return off.Length == 0 ? null : $"Off the road: {string.Join(", ", off)}.";
    }

    private static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{count} times" };
}
