using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Travel, stops and tyre load of one wheel over a pass. Travel from the reference state, bump positive.</summary>
public sealed record WheelMeasures
{
    /// <summary>The wheel in words.</summary>
    public required string Wheel { get; init; }

    /// <summary>The axle it is on.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>Most bump travel, m.</summary>
    public required double Bump { get; init; }

    /// <summary>Most rebound travel, m (negative).</summary>
    public required double Rebound { get; init; }

    /// <summary>Least travel left before the bump stop touches, m; negative when it was pressed by so much; null without a stop.</summary>
    public required double? BumpMargin { get; init; }

    /// <summary>Least travel left before the rebound stop touches, m; null without a stop.</summary>
    public required double? ReboundMargin { get; init; }

    /// <summary>How often the bump stop was touched.</summary>
    public required int BumpContacts { get; init; }

    /// <summary>How often the rebound stop was touched.</summary>
    public required int ReboundContacts { get; init; }

    /// <summary>Tyre load at trim, N.</summary>
    public required double StaticLoad { get; init; }

    /// <summary>Least tyre load, N.</summary>
    public required double LeastLoad { get; init; }

    /// <summary>Greatest tyre load, N.</summary>
    public required double GreatestLoad { get; init; }

    /// <summary>Root mean square change of the tyre load from t = 0 over the static load (–).</summary>
    public required double LoadVariation { get; init; }

    /// <summary>Time without any load on the road, s.</summary>
    public required double LiftOff { get; init; }

    /// <summary>The numbers of every wheel: four, or front and rear of a two-wheeler.</summary>
    public static IReadOnlyList<WheelMeasures> Of(Pass pass) =>
        [.. (pass.Model.Rolls ? new[] { 0, 1, 2, 3 } : [0, 2]).Select(i => Of(pass, i))];

    internal static WheelMeasures Of(Pass pass, int i)
    {
        var load = pass.TyreLoad(i);
        var samples = pass.Travel(i);
        var travel = new Curve(pass, samples);
        var (rebound, bump) = travel.Range();
        var (least, greatest) = new Curve(pass, load).Range();
        var touch = pass.Model.BumpTouch[i];
        var top = pass.Model.ReboundTouch[i];
        return new WheelMeasures
        {
            Wheel = CornerNames.Of(i, pass.Model.Rolls),
            End = i < 2 ? AxleEnd.Front : AxleEnd.Rear,
            Bump = bump,
            Rebound = rebound,
            BumpMargin = double.IsFinite(touch) ? touch - bump : null,
            ReboundMargin = double.IsFinite(top) ? rebound - top : null,
            BumpContacts = travel.Rises(touch),
            ReboundContacts = new Curve(pass, samples.Select(s => -s).ToArray()).Rises(-top),
            StaticLoad = StaticLoadOf(pass, i),
            // A tyre cannot pull: the curve swings below nothing where the wheel lifts off.
            LeastLoad = Math.Max(0.0, least),
            GreatestLoad = greatest,
            LoadVariation = LoadVariationOf(pass, i),
            LiftOff = load.Count(n => n <= 0.0) * pass.SampleStep,
        };
    }

    internal static double LoadVariationOf(Pass pass, int corner)
    {
        var still = StaticLoadOf(pass, corner);
        return Window.RmsOfRide(pass, [.. pass.TyreLoad(corner).Select(load => load - still)]) / still;
    }

    private static double StaticLoadOf(Pass pass, int corner) => pass.Model.Trim.WheelLoad[corner];
}
