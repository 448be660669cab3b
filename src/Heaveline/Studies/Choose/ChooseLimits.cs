using Heaveline.Parts;

namespace Heaveline.Studies;

/// <summary>What must hold of whatever is bought, each against the car as it is (–, by how much of itself a number may grow).</summary>
public sealed record ChooseLimits
{
    /// <summary>In what share of the drawn cars a limit must hold where nothing else is said.</summary>
    public const double UsualShare = 0.9;

    /// <summary>By how much the settling of any single use case may grow.</summary>
    public double WorstRoad { get; init; } = 0.03;

    /// <summary>In what share of the drawn cars that must hold.</summary>
    public double WorstRoadShare { get; init; } = UsualShare;

    /// <summary>By how much the mean hit may grow.</summary>
    public double Hit { get; init; } = 0.10;

    /// <summary>In what share of the drawn cars that must hold.</summary>
    public double HitShare { get; init; } = UsualShare;

    /// <summary>By how much the change of tyre load on the random road may grow, at the worst wheel; null for no limit.</summary>
    public double? Grip { get; init; }

    /// <summary>In what share of the drawn cars that must hold.</summary>
    public double GripShare { get; init; } = UsualShare;

    /// <summary>How much of its load at rest every tyre must keep over every obstacle (–), or as much as now; null for no limit.</summary>
    public double? LeastLoad { get; init; }

    /// <summary>In what share of the drawn cars that must hold.</summary>
    public double LeastLoadShare { get; init; } = UsualShare;

    /// <summary>How much bump travel must be left standing under any load; null for no limit.</summary>
    public ChooseTravelLimit? BumpLeft { get; init; }

    /// <summary>How much droop must be left standing under any load; null for no limit.</summary>
    public ChooseTravelLimit? DroopLeft { get; init; }

    /// <summary>In what share of the drawn cars every crossing must run to its end; null: no limit of its own.</summary>
    public double? NeverMetal { get; init; }

    /// <summary>The greatest of these shares.</summary>
    public double GreatestShare => new[]
    {
        WorstRoadShare, HitShare, GripShare, LeastLoadShare, BumpLeft?.Share ?? 0.0, DroopLeft?.Share ?? 0.0, NeverMetal ?? 0.0,
    }.Max();

    /// <summary>By how much the roll in a bend may grow under any load, in the car as stated.</summary>
    public double Roll { get; init; } = 0.05;

    /// <summary>By how much the pitch in braking may grow under any load, in the car as stated.</summary>
    public double Braking { get; init; } = 0.05;

    /// <summary>By how much the beam may swing more between loads, in drop per distance, in the car as stated.</summary>
    public double LampSwing { get; init; } = 0.001;

    /// <summary>How far the beam may swing between loads in all, in drop per distance, whatever it does now; null: as much more as it may.</summary>
    public double? LampSwingInAll { get; init; }

    /// <summary>How far the beam may swing between loads, in drop per distance.</summary>
    /// <param name="now">How far it does in the car as it is.</param>
    internal double MostSwing(double now) => LampSwingInAll ?? (now + LampSwing);

    /// <summary>What it may cost; null for no limit.</summary>
    public Money? Cost { get; init; }
}
