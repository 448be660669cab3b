using System.Globalization;
using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What stands beside the sliders and follows them: frequencies, damping ratios, travel left, the interconnection's parts.</summary>
internal static class SettingNotes
{
    /// <summary>Words by the setting's key.</summary>
    public static IEnumerable<(string Key, string Text)> Of(PassView view)
    {
        var model = view.Now.Model;
        var axles = AxleRide.Of(model);
        foreach (var axle in axles)
        {
            var end = axle.End == AxleEnd.Front ? "front" : "rear";
            yield return ($"{end}-spring", view.State.AsFrequencies
                ? Text($"{axle.Rates.WheelRate / 1000.0:0.0#} N/mm at the wheel")
                : Text($"{axle.Rates.Frequency:0.00} Hz with the tyres"));
            yield return (
                $"{end}-damping",
                Text($"ratio {axle.Damping.Ratio:0.00} ({axle.Damping.BumpRatio:0.00} bump, {axle.Damping.ReboundRatio:0.00} rebound)"));
            var left = model.Trim.BumpLeft[2 * (int)axle.End];
            if (double.IsFinite(left))
            {
                yield return (
                    $"{end}-stop",
                    left >= 0.0
                        ? Text($"{In.Millimetres.Of(left):F0} mm left standing")
                        : Text($"pressed {-In.Millimetres.Of(left):F0} mm standing"));
            }
        }

        if (model.Car.Interconnection is ElasticLink && InterconnectionBench.Of(model) is { } bench)
        {
            yield return (
                "link",
                Text($"makes {In.Percent.Of(bench.HeaveShare):F0} % of the heave stiffness, ")
                + Text($"{In.Percent.Of(Math.Max(0.0, bench.PitchShare)):F0} % of the pitch stiffness"));
            var share = 1.0 - (bench.Without.Damping.Heave / bench.With.Damping.Heave);
            yield return ("link-damping", Text($"makes {In.Percent.Of(share):F0} % of the heave damping"));
        }
        else
        {
            yield return ("link", "none now");
            yield return ("link-damping", "none now");
        }

        yield return ("wheelbase", Text($"pitch inertia {model.Body.PitchInertia:F0} kg m² loaded, dynamic index {Index(view):0.00}"));
        yield return ("ratio", Ratio(axles));
    }

    private static string Ratio(IReadOnlyList<AxleRide> axles)
    {
        var (front, rear) = (axles[0].Rates.Frequency, axles[1].Rates.Frequency);
        return Text($"Ride frequencies {front:0.00} Hz in front and {rear:0.00} Hz behind under this load: rear over front {rear / front:0.00}.");
    }

    private static double Index(PassView view) => ModelChange.DynamicIndexOf(view.Now.Model);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
