using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Recording;
using Heaveline.Tuning;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>The page's sliders as a live car follows them: every place of a slider sets the car as the program itself sets it.</summary>
internal static class LiveSettings
{
    /// <summary>What is asked of a live car for a state at rest.</summary>
    /// <param name="view">The state.</param>
    /// <param name="lines">The sliders.</param>
    public static LiveAsked Of(PassView view, IEnumerable<SliderLine> lines)
    {
        SliderLine[] followed = [.. lines.Where(line => IsOfCar(view.State, line.Key))];
        return new([.. followed.Select(line => (line.Key, Places(line)))], at => Set(view, followed, at));
    }

    /// <summary>How many places a slider has.</summary>
    public static int Places(SliderLine line) => 1 + (int)Math.Floor(((line.Scale.To - line.Scale.From) / line.Scale.Step) + 1e-6);

    /// <summary>The value at a place, as its field would say it.</summary>
    public static double Value(SliderLine line, int place) => Math.Round(line.Scale.From + (place * line.Scale.Step), line.Scale.Decimals);

    // A ride frequency asks for the rate that makes it; a wheelbase moves seats and loads; a stop is a line in the charts too, drawn by the program.
    private static bool IsOfCar(PassState state, string key) => key == Luggage.Key
        || (Settings.All(state.InertiaGrows).FirstOrDefault(setting => setting.Key == key) is { } setting
            && setting is not (WheelbaseSetting or StopSetting) && !(state.AsFrequencies && setting is SpringSetting));

    private static (Car Car, LoadState Load)? Set(PassView view, SliderLine[] lines, IReadOnlyList<int?> at)
    {
        var state = view.State;
        for (var i = 0; i < lines.Length; i++)
        {
            state = at[i] is { } place ? state.With(lines[i].Key, lines[i].Own(Value(lines[i], place))) : state;
        }

        try
        {
            var set = PassTrial.SetCar(state, view.Described, view.Load);
            return (set.Car, set.Load);
        }
        catch (RefusedValueException)
        {
            // The program says why when the slider stands there.
            return null;
        }
    }
}
