using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A drawing to scale, in metres, both directions alike: a side view of the car, its motion centres, its load states.</summary>
public sealed record ScenePanel : Panel
{
    /// <summary>Left edge of the box shown, m. With <see cref="XGrowsLeft"/> it is still the smaller x.</summary>
    public required double XFrom { get; init => field = Drawable.Finite(value); }

    /// <summary>The larger x of the box shown, m.</summary>
    public required double XTo { get; init => field = Above(value, XFrom, "width of the scene"); }

    /// <summary>Bottom of the box shown, m.</summary>
    public required double ZFrom { get; init => field = Drawable.Finite(value); }

    /// <summary>Top of the box shown, m.</summary>
    public required double ZTo { get; init => field = Above(value, ZFrom, "height of the scene"); }

    /// <summary>True when x is drawn growing to the left, so that a car that faces +x faces the left-hand side.</summary>
    public bool XGrowsLeft { get; init; }

    /// <summary>What is drawn, from back to front.</summary>
    public required ImmutableArray<Shape> Shapes { get; init => field = Drawable.Some(value, "Give the scene something to show."); }

    /// <summary>Length of a scale bar at the lower left, m. Null for none.</summary>
    public double? ScaleBar { get; init => field = Drawable.Positive(value); }

    /// <summary>What stands at the scale bar; blank: its length in metres.</summary>
    public string ScaleLabel { get; init => field = value ?? ""; } = "";

    private static double Above(double end, double start, string what) =>
        double.IsFinite(end) && end > start
            ? end
            : throw new RefusedValueException(what, $"{end - start:G6} m", "above 0 m", "Give the smaller edge first, then the larger.");
}
