namespace Heaveline.Files.Drives;

/// <summary>What a column of a log holds.</summary>
internal enum ColumnKind
{
    /// <summary>Instants.</summary>
    Time,

    /// <summary>Specific force along an axis, gravity in it.</summary>
    Acceleration,

    /// <summary>Acceleration along an axis, gravity taken off.</summary>
    WithoutGravity,

    /// <summary>Gravity along an axis.</summary>
    Gravity,

    /// <summary>Turn rate about an axis.</summary>
    TurnRate,

    /// <summary>Speed over ground.</summary>
    Speed,

    /// <summary>Latitude.</summary>
    Latitude,

    /// <summary>Longitude.</summary>
    Longitude,

    /// <summary>How sure a fix is of its place.</summary>
    PositionAccuracy,
}
