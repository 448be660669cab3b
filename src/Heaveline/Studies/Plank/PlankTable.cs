using Heaveline.Answers;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Rows of planks as a table.</summary>
public static class PlankTable
{
    private const string Page = "guide/a-test-day.md";

    private static readonly Measure<PlankFind>[] All =
    [
        Of("plank-speed", "speed", In.KilometresPerHour, 1, f => f.Speed, "Speed at which the row is driven.") with
        {
            Name = "speed over the planks",
        },
        Of("plank-height", "greatest height", In.Millimetres, 0, f => f.Layout.Height, "Height of the row's highest place.") with
        {
            Name = "greatest height of the planks",
        },
        Of("plank-length", "length of the row", In.Metres, 2, f => f.Layout.End, "From where the first plank begins to where the last one ends."),
        Of("plank-share", "share left in the wanted motion", In.Percent, 0, f => f.Share,
            "Share of the body's energy of motion, heave and pitch together, that lies in the wanted one in the first second after the rear wheels "
            + "have left, by the nonlinear pass."),
        Of("plank-least-share", "the least of it, speed ± 5 %", In.Percent, 0, f => f.LeastShare,
            "The least of that share at the speed, 5 % below and 5 % above.") with { Name = "least share left in the wanted motion, speed ± 5 %" },
        Of("plank-linear-share", "share by the closed form", In.Percent, 0, f => f.LinearShare,
            "The same share of the car made linear about its trim, by its closed-form response to the planks."),
        Of("plank-whole-share", "share while driving over it, too", In.Percent, 0, f => f.WholeShare,
            "The share from the front wheels' first contact to a second after the rear wheels have left."),
        Of("plank-motion", "speed of the swinging end", In.MetresPerSecond, 3, f => f.Motion,
            "Root mean square speed of the end of the body that moves farther in the wanted motion, in that second."),
        SettlingPitch,
        Of("plank-least-load", "least load of a tyre, of that at rest", In.Percent, 0, f => f.LeastLoad,
            "Least load of any tyre in the three passes over what it bears at rest."),
        Of("plank-travel-left", "travel left to the nearest stop", In.Millimetres, 0, f => f.TravelLeft,
            "Least distance of any wheel from where it would touch a stop, in the three passes."),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    private static Measure<PlankFind> SettlingPitch => Of(
        "plank-pitch",
        "RMS pitch, first second",
        In.Degrees,
        3,
        f => SettlingCatalogue.RmsPitch.Of(f.Pass),
        "Root mean square pitch angle in the first second after the rear wheels have left the planks.") with
    {
        Name = "RMS pitch in the first second after the planks",
    };

    /// <summary>The table, a column a row of planks.</summary>
    /// <param name="names">What each row of planks is to excite.</param>
    /// <param name="finds">The rows.</param>
    public static FactTable Of(IReadOnlyList<string> names, IReadOnlyList<PlankFind> finds) => new FactTable("Planks", names).Add(All, finds);

    private static Measure<PlankFind> Of(string key, string label, ShownUnit unit, int digits, Func<PlankFind, double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
