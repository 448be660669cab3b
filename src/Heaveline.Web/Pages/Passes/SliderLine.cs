using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>One slider as the page shows it.</summary>
/// <param name="Key">Its name in the address.</param>
/// <param name="Label">Its label.</param>
/// <param name="Scale">What it runs over, in the unit shown.</param>
/// <param name="Value">Where it stands.</param>
/// <param name="IsChanged">Whether it stands elsewhere than described.</param>
/// <param name="Note">What follows it.</param>
public sealed record SliderLine(string Key, string Label, SettingScale Scale, double Value, bool IsChanged, string Note)
{
    private const int MostDigits = 5;
    private const string Hertz = "Hz";

    /// <summary>Of the unit shown in one of the setting's own; 1 for readers of metric units.</summary>
    public double Factor { get; private init; } = 1.0;

    /// <summary>A value as its field shows it.</summary>
    public string Text(double value) => Rounded.Text(
        Factor == 1.0 ? Math.Round(value, Math.Max(Scale.Decimals, 3)) : Rounded.Significant(value, MostDigits));

    /// <summary>That the value lies beyond the slider's ends, which cannot show it; null where it does not.</summary>
    public string? Beyond => Value >= Scale.From - (1e-9 * Math.Abs(Scale.From)) && Value <= Scale.To + (1e-9 * Math.Abs(Scale.To)) ? null
        : $"{Text(Value)} {Scale.Unit}".TrimEnd() + $" is {(Value < Scale.From ? "below" : "above")} what the slider reaches "
            + $"({Text(Scale.From)} to {Text(Scale.To)}{(Scale.Unit.Length > 0 ? $" {Scale.Unit}" : "")}): it stands at its end, "
            + "and the car is driven with the value of the box.";

    /// <summary>A value typed or slid to, in the setting's own unit; null where it is the value described, as nearly as that is shown.</summary>
    /// <param name="shown">The value in the unit shown.</param>
    public double? Own(double shown)
    {
        var near = Factor == 1.0 ? 1e-9 * Math.Max(1.0, Math.Abs(shown)) : 0.6 * Math.Pow(10.0, 1 - MostDigits) * Math.Abs(Scale.Described);
        return Math.Abs(shown - Scale.Described) < near ? null : Factor == 1.0 ? shown : Rounded.Significant(shown / Factor, 7);
    }

    /// <summary>All sliders of a view, in groups under headings, in the units of a reader.</summary>
    public static IReadOnlyList<(string Heading, IReadOnlyList<SliderLine> Lines)> Of(PassView view, ReaderUnits units) =>
        [.. Of(view).Select(group => (group.Heading, (IReadOnlyList<SliderLine>)[.. group.Lines
            .Select(line => (line with { IsChanged = line.IsChanged && line.IsElsewhere }).InUnits(units))]))];

    private SliderLine InUnits(ReaderUnits units) => this with
    {
        Scale = Scale.InUnits(units),
        Value = Value * units.Factor(Scale.Unit),
        Factor = units.Factor(Scale.Unit),
    };

    // What an address sets to the value described is not changed; a ride frequency is shown rounded, and its rate says whether it is.
    private bool IsElsewhere => Scale.Unit == Hertz || Math.Abs(Value - Scale.Described) > 1e-9 * Math.Max(1.0, Math.Abs(Value));

    private static IReadOnlyList<(string Heading, IReadOnlyList<SliderLine> Lines)> Of(PassView view)
    {
        var notes = SettingNotes.Of(view).ToDictionary(note => note.Key, note => note.Text);
        var lines = Settings.All(view.State.InertiaGrows).Select(setting => Line(view, setting, notes)).OfType<SliderLine>().ToList();
        IReadOnlyList<SliderLine> Pick(params string[] keys) => [.. lines.Where(line => keys.Contains(line.Key))];
        (string, IReadOnlyList<SliderLine>)[] groups =
        [
            ("Springs", Pick("front-spring", "rear-spring")),
            ("Dampers", Pick("front-damping", "rear-damping")),
            ("Road and speed", [Speed(view), .. Height(view)]),
            ("Load", [LuggageLine(view)]),
            ("Bump stops", Pick("front-stop", "rear-stop")),
            ("Interconnection", Pick("link", "link-damping")),
            ("Wheelbase", Pick("wheelbase")),
        ];
        return [.. groups.Where(group => group.Item2.Count > 0)];
    }

    private static SliderLine? Line(PassView view, Setting setting, Dictionary<string, string> notes)
    {
        if (setting.ScaleOf(view.Described) is not { } scale)
        {
            return null;
        }

        var moved = view.State.Values.TryGetValue(setting.Key, out var set);
        var note = notes.GetValueOrDefault(setting.Key, "");
        if (view.State.AsFrequencies && setting is SpringSetting spring)
        {
            var described = Frequency(view, RideModel.Of(view.Described, view.Load), spring.End);
            return new SliderLine(
                setting.Key,
                setting.Label,
                new SettingScale(Hertz, Math.Round(described, 2), Math.Round(0.6 * described, 2), Math.Round(1.6 * described, 2), 0.01),
                Math.Round(Frequency(view, view.Now.Model, spring.End), 3),
                moved,
                note);
        }

        return new SliderLine(setting.Key, Labelled(view, setting), scale, moved ? set : scale.Described, moved, note);
    }

    private static string Labelled(PassView view, Setting setting) =>
        setting is SpringSetting spring && view.Described.At(spring.End).Spring.Law is LinearSpring
            ? $"{setting.Label} rate, at the {(IsGivenAtWheel(view, spring.End.Key()) ? "wheel" : "spring")}"
            : setting.Label;

    private static bool IsGivenAtWheel(PassView view, string end) =>
        (view.Reading.Root?.At(end, "spring", "wheel-rate") ?? view.Reading.Root?.At(end, "spring", "torsion-bar")) is not null;

    private static double Frequency(PassView view, RideModel model, AxleEnd end) => AxleRide.Of(model, end).Rates.Frequency;

    private static SliderLine Speed(PassView view) =>
        new(
            PassState.Speed,
            "Speed",
            new SettingScale("km/h", PassState.UsualSpeed, 5.0, 130.0, 1.0, $"the box takes any speed {DrivingSpeed.LimitsIn(null)}"),
            view.State.KilometresPerHour,
            view.State.Values.ContainsKey(PassState.Speed),
            "");

    private static IEnumerable<SliderLine> Height(PassView view)
    {
        if (view.Road.Event is null)
        {
            yield break;
        }

        var described = In.Millimetres.Of(ObstacleHeight.Of(view.Road));
        var height = Math.Round(Math.Abs(described), 1);
        yield return new SliderLine(
            PassState.Height,
            described < 0.0 ? "Depth of the obstacle" : "Height of the obstacle",
            new SettingScale("mm", height, 5.0, Math.Max(150.0, Math.Ceiling(2.0 * height)), 1.0),
            view.State.Values.GetValueOrDefault(PassState.Height, height),
            view.State.Values.ContainsKey(PassState.Height),
            "");
    }

    private static SliderLine LuggageLine(PassView view) =>
        new(
            Luggage.Key,
            "Luggage over the rear axle",
            Luggage.Scale,
            view.State.Values.GetValueOrDefault(Luggage.Key),
            view.State.Values.ContainsKey(Luggage.Key),
            "");
}
