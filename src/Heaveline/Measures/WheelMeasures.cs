using Heaveline.Modes;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Travel, stops and tyre load of one wheel over a pass. Travel from the reference state, bump positive.</summary>
public sealed record WheelMeasures
{
    /// <summary>The wheel in words.</summary>
    public required string Wheel { get; init; }

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

    private static WheelMeasures Of(Pass pass, int i)
    {
        var travel = pass.Travel(i);
        var load = pass.TyreLoad(i);
        var still = (pass.Model.Rolls ? 1.0 : 2.0) * pass.Model.Trim.WheelLoad[i];
        var touch = pass.Model.BumpTouch[i];
        var top = pass.Model.ReboundTouch[i];
        double[] change = [.. new Window(0.0, double.PositiveInfinity).Of(pass.Time, load).ToArray().Select(n => n - still)];
        return new WheelMeasures
        {
            Wheel = CornerNames.Of(i, pass.Model.Rolls),
            Bump = Signal.Most(travel),
            Rebound = Signal.Least(travel),
            BumpMargin = double.IsFinite(touch) ? touch - Signal.Most(travel) : null,
            ReboundMargin = double.IsFinite(top) ? Signal.Least(travel) - top : null,
            BumpContacts = Contacts(travel, s => s > touch),
            ReboundContacts = Contacts(travel, s => s < top),
            StaticLoad = still,
            LeastLoad = Signal.Least(load),
            GreatestLoad = Signal.Most(load),
            LoadVariation = Signal.Rms(change) / still,
            LiftOff = load.Count(n => n <= 0.0) * pass.SampleStep,
        };
    }

    private static int Contacts(double[] travel, Func<double, bool> touches)
    {
        var count = 0;
        for (var k = 0; k < travel.Length; k++)
        {
            if (touches(travel[k]) && (k == 0 || !touches(travel[k - 1])))
            {
                count++;
            }
        }

        return count;
    }
}
