namespace Heaveline.Studies;

/// <summary>What else a car that is told by a drive tells.</summary>
public enum DriveDetailKind
{
    /// <summary>The car of the gentler and of the harder bumps.</summary>
    Halves,

    /// <summary>The speeds that suit over the sites.</summary>
    Speeds,

    /// <summary>The roughness along the drive.</summary>
    Roughness,
}
