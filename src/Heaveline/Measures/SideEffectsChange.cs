namespace Heaveline.Measures;

/// <summary>Two states of a car side by side: what a change costs besides the ride.</summary>
public sealed record SideEffectsChange
{
    /// <summary>Before the change.</summary>
    public required SideEffects Before { get; init; }

    /// <summary>After it.</summary>
    public required SideEffects After { get; init; }

    /// <summary>Change of the front axle's share of the roll stiffness with tyres (–): above 0 moves the balance towards understeer.</summary>
    public double? FrontShareChange => After.Roll?.FrontShareWithTyres - Before.Roll?.FrontShareWithTyres;

    /// <summary>Pitch in braking after over before (–).</summary>
    public double BrakingRatio => After.Braking.Angle / Before.Braking.Angle;

    /// <summary>Change of the dipped beam's drop at trim (–); below 0 points higher. Null without a lamp in both.</summary>
    public double? LampDropChange => After.Headlamp?.Drop - Before.Headlamp?.Drop;

    /// <summary>What lies between two states of a car.</summary>
    public static SideEffectsChange Between(SideEffects before, SideEffects after) => new() { Before = before, After = after };
}
