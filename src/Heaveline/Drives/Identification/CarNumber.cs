namespace Heaveline.Drives.Identification;

/// <summary>A number of the car that a drive tells.</summary>
public enum CarNumber
{
    /// <summary>Front ride frequency on rigid tyres, Hz.</summary>
    FrontFrequency,

    /// <summary>Rear ride frequency on rigid tyres, Hz.</summary>
    RearFrequency,

    /// <summary>Rear over front ride frequency.</summary>
    FrequencyRatio,

    /// <summary>Front damping ratio.</summary>
    FrontDamping,

    /// <summary>Rear damping ratio.</summary>
    RearDamping,

    /// <summary>Dynamic index of the sprung mass.</summary>
    PitchIndex,

    /// <summary>Frequency of the slower mode of the body, Hz.</summary>
    FirstModeFrequency,

    /// <summary>Damping ratio of the slower mode of the body.</summary>
    FirstModeDamping,

    /// <summary>Frequency of the faster mode of the body, Hz.</summary>
    SecondModeFrequency,

    /// <summary>Damping ratio of the faster mode of the body.</summary>
    SecondModeDamping,

    /// <summary>Front wheel hop, the unsprung mass on its tyre, Hz.</summary>
    FrontHop,

    /// <summary>Rear wheel hop, the unsprung mass on its tyre, Hz.</summary>
    RearHop,
}
