namespace Heaveline.Cars;

/// <summary>How many wheel tracks the vehicle has.</summary>
public enum VehicleKind
{
    /// <summary>Two axles with a wheel at each side.</summary>
    Car,

    /// <summary>One wheel in front and one behind, in one plane. It heaves and pitches; roll is the rider's.</summary>
    TwoWheeler,
}
