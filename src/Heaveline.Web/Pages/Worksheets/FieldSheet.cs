using Heaveline.Studies;

namespace Heaveline.Web.Pages.Worksheets;

/// <summary>The worksheet that gives the number of one field of a car.</summary>
/// <param name="Door">The worksheet.</param>
/// <param name="Value">Which of its values it is.</param>
public sealed record FieldSheet(SheetDoor Door, string Value)
{
    private static readonly string[] Weighed = ["front", "rear", "front-left", "front-right", "rear-left", "rear-right"];

    /// <summary>The worksheet for a key of the car file; null where none gives its number.</summary>
    /// <param name="path">The keys that lead to it.</param>
    public static FieldSheet? For(IReadOnlyList<string> path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path switch
        {
            ["weighing", var wheel] when Weighed.Contains(wheel) => Of("weigh", wheel),
            ["body", "centre-of-gravity-height"] => Of("tilt", "body-height"),
            [_, "spring", "rate"] => Of("spring", "rate"),
            [_, "spring", "free-length"] => Of("spring", "free-length"),
            [_, "spring", "wheel-rate"] => Of("wheel-rate", "rate"),
            [_, "spring" or "damper", "moves"] => Of("ratio", "moves"),
            [_, "spring", "spring-per-wheel"] or [_, "damper", "damper-per-wheel"] => Of("ratio", "ratio"),
            [_, "damper", "damping-ratio"] => Of("decay", "damping-ratio"),
            [_, "friction", "half-width"] => Of("wheel-rate", "friction"),
            // Of a stop its beginning alone: its rate hangs together with the exponent beside it.
            [_, "bump-stop", "clearance"] => Of("wheel-rate", "bump-clearance"),
            [_, "rebound-stop", "clearance"] => Of("wheel-rate", "rebound-clearance"),
            _ => null,
        };
    }

    /// <summary>Whether the value cannot be had without a reading that the sheet itself can do without.</summary>
    /// <param name="choice">The reading's name.</param>
    public bool Needs(string choice) => (Value, choice) is ("body-height", "unsprung");

    private static FieldSheet Of(string word, string value) => new(SheetDoor.Named(word), value);
}
