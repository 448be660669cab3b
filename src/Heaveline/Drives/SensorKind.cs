namespace Heaveline.Drives;

/// <summary>What a sensor of a log measures.</summary>
public enum SensorKind
{
    /// <summary>Specific force along three axes of the phone, gravity in it, m/s².</summary>
    Acceleration,

    /// <summary>Acceleration along three axes of the phone with gravity taken off, m/s².</summary>
    AccelerationWithoutGravity,

    /// <summary>Gravity along three axes of the phone, as the phone reckons it, m/s².</summary>
    Gravity,

    /// <summary>Turn rate about three axes of the phone, rad/s.</summary>
    TurnRate,

    /// <summary>Speed over ground, m/s.</summary>
    Speed,

    /// <summary>Latitude and longitude, rad, and where the log says it the radius that holds a fix two times in three, m.</summary>
    Position,
}
