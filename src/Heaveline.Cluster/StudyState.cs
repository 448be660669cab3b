namespace Heaveline.Cluster;

/// <summary>How a study stands with a machine that helps.</summary>
public enum StudyState
{
    /// <summary>It has ended.</summary>
    Over,

    /// <summary>It goes on, and the machine is at work.</summary>
    AtWork,

    /// <summary>It goes on, and the machine was given up in between: it may ask again.</summary>
    GivenUp,
}
