using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>
/// A measure over two settings, as shaded bands between contour lines with numbers on them, and a scale beside. Places without a value are
/// left white and hatched.
/// </summary>
public sealed record MapPanel : Panel
{
    /// <summary>The x axis. Without a given range it runs over the grid.</summary>
    public required Axis X { get; init => field = OnScale(value ?? throw new ArgumentNullException(nameof(value)), Grid?.Xs); }

    /// <summary>The y axis. Without a given range it runs over the grid.</summary>
    public required Axis Y { get; init => field = OnScale(value ?? throw new ArgumentNullException(nameof(value)), Grid?.Ys); }

    /// <summary>
    /// The measure: its name, unit, and how its values are spaced. A given range bounds the scale and the levels chosen, not the map.
    /// </summary>
    public required Axis Value
    {
        get;
        init
        {
            field = OnScale(value ?? throw new ArgumentNullException(nameof(value)), Grid?.Values);
            OnScale(field, Levels);
            OnScale(field, Only(Middle));
        }
    }

    /// <summary>The values.</summary>
    public required MapGrid Grid
    {
        get;
        init
        {
            field = value ?? throw new ArgumentNullException(nameof(value));
            OnScale(X, field.Xs);
            OnScale(Y, field.Ys);
            OnScale(Value, field.Values);
        }
    }

    /// <summary>
    /// Values with a contour line, in the unit of the measure, rising. Empty: chosen in steps of 1, 2 or 5 times
    /// a power of ten, counted from the middle.
    /// </summary>
    public ImmutableArray<double> Levels
    {
        get;
        init
        {
            field = Drawable.Places(value) is var levels && levels.Zip(levels.Skip(1)).All(pair => pair.First < pair.Second)
                ? levels
                : throw new RefusedValueException("levels of the map", "out of order", "rising", "Sort the levels, and give each once.");
            OnScale(Value, field);
        }
    } = [];

    /// <summary>
    /// The value that both sides are told from, such as 1 for a ratio that changes nothing: shades turn warm above and cool below it, lines are
    /// solid above and dashed below. Null: one hue from light to dark.
    /// </summary>
    public double? Middle
    {
        get;
        init
        {
            field = Drawable.Finite(value);
            OnScale(Value, Only(field));
        }
    }

    /// <summary>A range of values hatched over the shades. Null for none.</summary>
    public MapHatch? Hatch { get; init; }

    /// <summary>Nodes without a value that mean something; the others without one are hatched as "no value".</summary>
    public ImmutableArray<MapZone> Zones
    {
        get;
        init => field = Drawable.Any(value) is var zones && zones.All(z => z.Nodes.Length == Grid.Values.Length)
            ? zones
            : throw new RefusedValueException(
                "zones of the map", "of another shape", $"{Grid.Values.Length} nodes, as the grid has", "Give a zone for every node.");
    } = [];

    /// <summary>Curves over the map.</summary>
    public ImmutableArray<Trace> Traces { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Points with a symbol over the map.</summary>
    public ImmutableArray<Mark> Marks { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Height of the plotting area on paper, mm, 20 to 200. Null: chosen by the width of the figure.</summary>
    public double? Height
    {
        get;
        init =>
            field = value is { } given ? Checked.Within(given, 20.0, 200.0, "Give the height of the plotting area in millimetres of paper.") : null;
    }

    private static ImmutableArray<double> Only(double? value) => value is { } given ? [given] : [];

    // What a logarithmic axis cannot place is refused here, so that the map never has holes nobody asked for.
    private static Axis OnScale(Axis axis, ImmutableArray<double>? values)
    {
        if (axis is { Scale: AxisScale.Logarithmic } && values is { IsDefault: false } given && given.Any(value => value <= 0.0))
        {
            throw new RefusedValueException(
                $"axis '{axis.Label}' of the map",
                $"{given.Min():G6}",
                "above 0 on a logarithmic axis",
                "Give values above zero, NaN where there is none, or a linear axis.");
        }

        return axis;
    }
}
