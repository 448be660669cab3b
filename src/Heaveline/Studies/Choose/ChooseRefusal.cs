namespace Heaveline.Studies;

/// <summary>Why a setup is none to choose, beside what no cure may do.</summary>
internal enum ChooseRefusal
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A part does not fit.</summary>
    Misfit,

    /// <summary>The car cannot stand so.</summary>
    CannotStand,

    /// <summary>It costs more than it may.</summary>
    Cost,

    /// <summary>It rolls more than it may.</summary>
    Roll,

    /// <summary>It pitches more in braking than it may.</summary>
    Braking,

    /// <summary>The beam swings more between loads than it may.</summary>
    LampSwing,

    /// <summary>On the random road no linear car moves as it does: its tyre load cannot be told.</summary>
    NoGrip,

    /// <summary>From this number on: what no cure may do, in the order of <see cref="CureBreach"/>.</summary>
    Breach = 100,
}
