namespace Heaveline.Elements;

/// <summary>What makes a car's fastest motion as fast as it is, and so keeps the step of a run short.</summary>
public enum StepCause
{
    /// <summary>Nothing about the car: the run's own longest step.</summary>
    None,

    /// <summary>The damper, where its force rises fastest.</summary>
    Damper,

    /// <summary>The tyre's damping.</summary>
    TyreDamping,

    /// <summary>The friction, between sticking and sliding.</summary>
    Friction,

    /// <summary>The spring, where it is stiffest, gas or steel.</summary>
    Spring,

    /// <summary>The tyre's rate.</summary>
    TyreRate,

    /// <summary>The anti-roll bar.</summary>
    AntiRollBar,

    /// <summary>The bump stop.</summary>
    BumpStop,

    /// <summary>The rebound stop.</summary>
    ReboundStop,

    /// <summary>The interconnection.</summary>
    Interconnection,

    /// <summary>The wheels, lighter than any wheel is.</summary>
    UnsprungMass,
}
