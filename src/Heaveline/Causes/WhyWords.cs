using System.Globalization;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Causes;

/// <summary>What causes are called, and the road tests that prove them.</summary>
internal static class WhyWords
{
    public static (string Is, string Neutral) Values(PitchCauseKind kind, RideModel model, NeutralCar neutral, WhyOptions options)
    {
        var tuning = neutral.Tuning;
        return kind switch
        {
            PitchCauseKind.Load => (Text($"{model.Load.Name}, {model.Load.Loads.Sum(l => l.Mass.Si):F0} kg"), "nothing loaded"),
            PitchCauseKind.Interconnection => ("front and rear joined", "not joined, equally stiff in heave"),
            PitchCauseKind.Wheelbase =>
                (Text($"wheelbase {model.Car.Wheelbase.Si:F2} m"), Text($"{neutral.Wheelbase:F2} m with the same dynamic index")),
            PitchCauseKind.DynamicIndex => (Text($"dynamic index {neutral.DynamicIndex:F2}"), Text($"{options.DynamicIndex:F2}")),
            PitchCauseKind.FrequencyRatio => (Text($"rear/front frequency ratio {tuning.Ratio:F2}"), Text($"{neutral.Ratio:F2}")),
            PitchCauseKind.DampingLevel => (Text($"mean damping ratio {tuning.MeanDamping:F2}"), Text($"{options.Damping:F2}")),
            PitchCauseKind.DampingSplit =>
                (Text($"damping ratios {tuning.FrontDamping:F2} front and {tuning.RearDamping:F2} rear"), "equal ones of the same mean"),
            PitchCauseKind.Tyre => (
                Text($"tyres {TyreRatio(model, Cars.AxleEnd.Front):F1} and {TyreRatio(model, Cars.AxleEnd.Rear):F1} times as stiff as the springs"),
                Text($"{options.TyreRatio:F1} times")),
            PitchCauseKind.Friction => (
                Text($"friction of {model.Car.Front.Friction.HalfWidth.Si:F0} N front and ")
                + Text($"{model.Car.Rear.Friction.HalfWidth.Si:F0} N rear at each wheel"),
                "none"),
            _ => ("stops touched", "no stops"),
        };
    }

    public static string Sentence(string what, string neutral, double relative, string measure)
    {
        var size = Math.Abs(relative) < 0.005
            ? "it hardly changes"
            : relative > 0.0 ? Text($"it makes {In.Percent.Of(relative):F0} % of") : Text($"it takes {-In.Percent.Of(relative):F0} % off");
        return Text($"{FirstLetter.Raised(what)} instead of {neutral}: {size} the {measure}.");
    }

    public static string Proof(PitchCauseKind kind, RideModel model, double speed) => kind switch
    {
        PitchCauseKind.Load =>
            "Drive the bump five times with the load and five times with the driver alone, at the same speed, with the log running.",
        PitchCauseKind.Interconnection =>
            "Shut the line, or undo the link, and drive the bump five times each way at the same speed. Mind the changed ride height.",
        PitchCauseKind.Wheelbase => Text($"Drive the bump at {In.KilometresPerHour.Of(speed) * 0.8:F0}, {In.KilometresPerHour.Of(speed):F0} and ")
            + Text($"{In.KilometresPerHour.Of(speed) * 1.25:F0} km/h: if the wheelbase is to blame the pitch ")
            + "follows the speed, whatever the springs.",
        PitchCauseKind.DynamicIndex => "Carry two equal masses, once both beside the centre of gravity and once one at each end, "
            + "so that the axle loads stay: the pitch must change with the inertia alone.",
        PitchCauseKind.FrequencyRatio => RatioProof(model),
        PitchCauseKind.DampingLevel => "Drive the bump five times, then with the dampers set one step harder at both ends, or renewed: "
            + "the swings after the bump must fall off faster.",
        PitchCauseKind.DampingSplit => "Film both ends of the body over the bump: the weaker damped end swings on when the other has come to rest.",
        PitchCauseKind.Tyre => "Drive the bump with the usual pressure and with 0.5 bar more in all tyres, within what their makers allow.",
        PitchCauseKind.Friction => "Drive a low and a high bump: with friction the low one makes more pitch in proportion, "
            + "and the body comes to rest at once instead of dying away.",
        _ => "Press modelling clay, or slide a cable tie, against the stops and drive the bump: the mark shows "
            + "whether they touch. Then drive it slower.",
    };

    private static string RatioProof(RideModel model)
    {
        var ends = Coincidence.Of(model);
        return ends.SuitedSpeed is { } suited
            ? Text($"Drive the bump from 30 to 110 km/h: the swing left in the second after it must be least near ")
                + Text($"{In.KilometresPerHour.Of(suited):F0} km/h, the speed that this ratio suits.")
            : "Drive the bump at the same speed with 30 kg over the front axle and then over the rear: the end that is too stiff or too soft shows "
                + "by which of the two swings less.";
    }

    private static double TyreRatio(RideModel model, Cars.AxleEnd end)
    {
        var axle = AxleState.Of(model, end);
        return axle.TyreRate / axle.Rate;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
