using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What must hold of a setup standing, against the car as it is under the same loads.</summary>
internal sealed class ChooseStanding
{
    private readonly ChooseLimits limits;
    private readonly (double Roll, double Braking)[] before;
    private readonly bool[] onStops;
    private readonly double swing;

    /// <param name="limits">The limits.</param>
    /// <param name="before">The car as it is under each load.</param>
    public ChooseStanding(ChooseLimits limits, IReadOnlyList<CarAtRest> before)
    {
        this.limits = limits;
        this.before = [.. before.Select(rest => (Roll(rest), Braking(rest)))];
        onStops = [.. before.Select(IsOnStops)];
        OnStops = [.. before.Where(IsOnStops).Select(rest => rest.Model.Load.Name)];
        swing = Swing(before);
    }

    /// <summary>Loads under which the car as it is stands on a bump stop: its roll and its pitch in braking are no measure there.</summary>
    public ImmutableArray<string> OnStops { get; }

    /// <summary>The limit of the beam's swing that the car as it is does not keep, with its own swing, in words; null where it keeps it.</summary>
    public string? SwingsTooFar => limits.LampSwingInAll is { } most && swing > most
        ? $"'beam's swing between loads at most {Print(most)}' ({Print(swing)})"
        : null;

    /// <summary>Whether a car stands on a bump stop.</summary>
    public static bool IsOnStops(CarAtRest rest) => StandingStops.Of(rest.Model).Any();

    /// <summary>The first limit that does not hold.</summary>
    /// <param name="after">The setup under the same loads.</param>
    public ChooseRefusal Against(IReadOnlyList<CarAtRest> after)
    {
        for (var k = 0; k < after.Count; k++)
        {
            if (onStops[k])
            {
                continue;
            }

            if (Roll(after[k]) > (1.0 + limits.Roll) * before[k].Roll)
            {
                return ChooseRefusal.Roll;
            }

            if (Braking(after[k]) > (1.0 + limits.Braking) * before[k].Braking)
            {
                return ChooseRefusal.Braking;
            }
        }

        return Swing(after) > limits.MostSwing(swing) ? ChooseRefusal.LampSwing : ChooseRefusal.None;
    }

    private static string Print(double drop) => $"{Numeral.Of(In.Percent.Of(drop), 2)} % of the distance";

    /// <summary>By how much the beam swings between loads, in drop per distance; 0 without a lamp.</summary>
    public static double Swing(IReadOnlyList<CarAtRest> loads)
    {
        double[] drops = [.. loads.Select(rest => rest.SideEffects.Headlamp?.Drop).OfType<double>()];
        return drops.Length == 0 ? 0.0 : drops.Max() - drops.Min();
    }

    /// <summary>Roll in a bend per g. Without a roll axis what holds the roll stands for it; a two-wheeler has neither.</summary>
    public static double Roll(CarAtRest rest) => rest.SideEffects.Roll is { } roll ? roll.AnglePerG ?? (1.0 / roll.WithTyres) : 0.0;

    /// <summary>Pitch in braking per g.</summary>
    public static double Braking(CarAtRest rest) => rest.SideEffects.Braking.Angle;
}
