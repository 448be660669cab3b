namespace Heaveline.Cluster;

/// <summary>How help with a study ended.</summary>
public enum HelpEnd
{
    /// <summary>The study has ended.</summary>
    Over,

    /// <summary>The machine of the study has gone.</summary>
    Gone,

    /// <summary>The study had ended, or its machine gone, before this one had joined.</summary>
    Missed,

    /// <summary>Stopped at this machine.</summary>
    Stopped,
}
