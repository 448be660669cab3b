using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Drives.Planning;

/// <summary>A hump that could be driven over on a test day.</summary>
public sealed record TestHump
{
    /// <summary>Two that anyone can lay out of boards: low and short, low and long; alike in both tracks.</summary>
    public static IReadOnlyList<TestHump> OfBoards { get; } =
    [
        Board(
            "six boards",
            new() { Start = 0.0, Length = 1.17, Layers = 1, Size = new() { Thickness = 0.022, Width = 0.195 }, IsAlong = false, Edge = 0.195 }),
        Board(
            "long boards",
            new() { Start = 0.0, Length = 4.2, Layers = 1, Size = new() { Thickness = 0.045, Width = 0.195 }, IsAlong = true, Edge = 0.45 }),
    ];

    /// <summary>Two low ones that roads have, for a car that is near its stops: a flat arc, and a joint across the lane.</summary>
    public static IReadOnlyList<TestHump> Low { get; } =
    [
        new() { Name = "low-hump", Road = Road.From(new RoundTopHump { Height = new(0.03), Length = new(3.7) }) },
        new() { Name = "joint", Road = Road.From(new Versine { Height = new(0.02), Length = new(0.8) }) },
    ];

    /// <summary>Its short name.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the hump a name."); }

    /// <summary>The road, with an obstacle alike in both tracks that ends as high as it begins.</summary>
    public required Road Road
    {
        get;
        init => field = Refusal(value) is { } refusal
            ? throw new RefusedValueException("hump", value.Caption, "an obstacle alike in both wheel tracks, level behind it", refusal)
            : value;
    }

    /// <summary>Why a road is no hump for a test day, a sentence; null where it is.</summary>
    /// <param name="road">The road.</param>
    public static string? Refusal(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        return road.Event is not { } hump ? "it has no obstacle with a beginning and an end."
            : hump.End - hump.Start is < 0.05 or > 30.0 ? "it must be 5 cm to 30 m long."
            : !Points(hump).All(x => Math.Abs(road.Left.Height(x) - road.Right.Height(x)) < 1e-6) ? "it must lie in both wheel tracks alike."
            : Math.Abs(road.Left.EndHeight - road.Left.StartHeight) > 1e-3 ? "it must end as high as it begins."
            : road.HasJump ? "it has an edge without a length."
            : null;
    }

    private static TestHump Board(string name, LaidBoards boards) => new() { Name = name, Road = new PlankLayout { Places = [boards] }.Road };

    private static IEnumerable<double> Points(RoadEvent hump) =>
        Enumerable.Range(0, 101).Select(k => hump.Start + ((hump.End - hump.Start) * k / 100.0));
}
