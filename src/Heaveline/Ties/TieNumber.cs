namespace Heaveline.Ties;

/// <summary>What ties tell of one axle.</summary>
public enum TieNumber
{
    /// <summary>Force of the dampers over that of the car file (–).</summary>
    Damping,

    /// <summary>Friction of one wheel's suspension, half-width, N.</summary>
    Friction,

    /// <summary>Wheel travel from the state described to the bump stop's contact, m.</summary>
    BumpStop,

    /// <summary>Rate of the springs over that of the car file (–); with counted swings or heights alone.</summary>
    Spring,
}
