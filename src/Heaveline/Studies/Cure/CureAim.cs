namespace Heaveline.Studies;

/// <summary>What a cure is to make less of.</summary>
public enum CureAim
{
    /// <summary>The pitch in the second after the rear wheels have left; on a road without an obstacle, the pitch of the whole road.</summary>
    Settling,

    /// <summary>The pitch acceleration of the hit; on a road without an obstacle, its root mean square.</summary>
    Hit,
}
