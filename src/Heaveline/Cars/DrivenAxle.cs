namespace Heaveline.Cars;

/// <summary>Which wheels push the car forwards.</summary>
public enum DrivenAxle
{
    /// <summary>The front wheels.</summary>
    Front,

    /// <summary>The rear wheels.</summary>
    Rear,

    /// <summary>All wheels.</summary>
    Both,
}
