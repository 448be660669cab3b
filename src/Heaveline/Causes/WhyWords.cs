using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tuning;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Causes;

/// <summary>What causes are called, and how large they are.</summary>
internal static class WhyWords
{
    public static (string Is, string Neutral) Values(PitchCauseKind kind, RideModel model, NeutralCar neutral, WhyOptions options, double speed)
    {
        var tuning = neutral.Tuning;
        var loaded = CauseValue.TuningOf(model);
        // What a cause is stands beside numbers of the loaded car elsewhere: where they differ it says of which load it is.
        string Own(string value, string? underLoad) => value == underLoad ? value : $"{value} ({NeutralLoad.Words(neutral.Load)})";
        return kind switch
        {
            PitchCauseKind.Load => (
                Text($"{model.Load.Name}, {NeutralLoad.Mass(model.Load):F0} kg"),
                neutral.Load.Loads.Count == 0
                    ? NeutralLoad.Words(neutral.Load)
                    : Text($"{neutral.Load.Name}, {NeutralLoad.Mass(neutral.Load):F0} kg")),
            PitchCauseKind.Interconnection => ("front and rear joined", "not joined, equally stiff in heave"),
            PitchCauseKind.Wheelbase =>
                (Text($"wheelbase {model.Car.Wheelbase.Si:F2} m"), Text($"{neutral.Wheelbase:F2} m with the same dynamic index")),
            PitchCauseKind.DynamicIndex => (
                Own(Text($"dynamic index {neutral.DynamicIndex:F2}"), Text($"dynamic index {ModelChange.DynamicIndexOf(model):F2}")),
                Text($"{options.DynamicIndex:F2}")),
            PitchCauseKind.FrequencyRatio => (
                Own(
                    Text($"rear/front frequency ratio {tuning.Ratio:F2}"),
                    loaded is null ? null : Text($"rear/front frequency ratio {loaded.Ratio:F2}")),
                Text($"{neutral.Ratio:F2}{RatioIs(neutral, options, speed)}")),
            PitchCauseKind.DampingLevel => (
                Own(
                    Text($"mean damping ratio {tuning.MeanDamping:F2}"),
                    loaded is null ? null : Text($"mean damping ratio {loaded.MeanDamping:F2}")),
                Text($"{options.Damping:F2}")),
            PitchCauseKind.DampingSplit => (Own(Dampings(tuning), loaded is null ? null : Dampings(loaded)), "equal ones of the same mean"),
            PitchCauseKind.Tyre => (
                Own(Tyres(neutral.Light), Tyres(model)),
                Text($"{options.TyreRatio:F1} times")),
            PitchCauseKind.Friction => (
                Text($"friction of {model.Car.Front.Friction.HalfWidth.Si:F0} N front and ")
                + Text($"{model.Car.Rear.Friction.HalfWidth.Si:F0} N rear at each wheel"),
                "none"),
            _ => ("stops touched", "no stops"),
        };
    }

    /// <summary>A cause and its size in a sentence: what helps is told in the measure's unit alone, since no share of the whole says it.</summary>
    public static string Sentence(string what, string neutral, double share, double value, Measure measure)
    {
        if (!double.IsFinite(share))
        {
            return $"{FirstLetter.Raised(what)} instead of {neutral}: nobody can tell, since no pair of passes with and without it ran to its end.";
        }

        var amount = $"{measure.Print(measure.Unit.Of(Math.Abs(share)))}{measure.Unit.Suffix}";
        var relative = value > 0.0 ? share / value : 0.0;
        var percent = relative is > 0.0 and <= 1.0 ? Text($" ({In.Percent.Of(relative):F0} %)") : "";
        var size = Math.Abs(relative) < 0.005
            ? "it hardly changes"
            : share > 0.0 ? $"it makes {amount}{percent} of" : $"it takes {amount} off";
        return $"{FirstLetter.Raised(what)} instead of {neutral}: {size} the {measure.Name}.";
    }

    // The neutral car's ends are damped alike. Damped as they are, the same rule may give another number, which the car's own rule prints.
    private static string RatioIs(NeutralCar neutral, WhyOptions options, double speed)
    {
        if (options.Ratio is not null || neutral.InStep > options.LargestRatio)
        {
            return options.Ratio is not null ? "" : ", the most that is common";
        }

        var own = neutral.InStepAsDamped is { } ratio
            ? Text($"{ratio:F2}") == Text($"{neutral.Ratio:F2}") ? "" : Text($", damped as they are {ratio:F2}")
            : ", damped as they are an end does not swing";
        return Text($", which brings the ends into step at {In.KilometresPerHour.Of(speed):0.#} km/h (both with a damping ratio of ")
            + Text($"{options.Damping:F2}{own})");
    }

    private static string Dampings(RideTuning tuning) => Text($"damping ratios {tuning.FrontDamping:F2} front and {tuning.RearDamping:F2} rear");

    private static string Tyres(RideModel model) =>
        Text($"tyres {TyreRatio(model, Cars.AxleEnd.Front):F1} and {TyreRatio(model, Cars.AxleEnd.Rear):F1} times as stiff as the springs");

    private static double TyreRatio(RideModel model, Cars.AxleEnd end)
    {
        var axle = AxleState.Of(model, end);
        return axle.TyreRate / axle.Rate;
    }
}
