namespace Heaveline.Drives.Comparison;

/// <summary>Which number of a pass is compared.</summary>
public enum ComparedNumber
{
    /// <summary>RMS pitch of the first second after the rear wheels have left the bump, rad.</summary>
    Headline,

    /// <summary>Greatest pitch acceleration of the hit, rad/s².</summary>
    Hit,
}
