namespace Heaveline.Cars;

/// <summary>One of the two axles.</summary>
public enum AxleEnd
{
    /// <summary>The front axle.</summary>
    Front,

    /// <summary>The rear axle.</summary>
    Rear,
}
