namespace Heaveline.Studies;

/// <summary>A number that is wished small, compared with the car as it is.</summary>
public enum ChooseWish
{
    /// <summary>Pitch in the first second after the rear wheels have left: always the first.</summary>
    Settling,

    /// <summary>Peak pitch acceleration of the hit.</summary>
    Hit,

    /// <summary>Vertical acceleration at the first seat on the random road.</summary>
    Ride,

    /// <summary>Root mean square change of the tyre load over static on the random road, at the worst wheel.</summary>
    Grip,

    /// <summary>What is lost of the least tyre load over the obstacles.</summary>
    LoadLost,

    /// <summary>What the parts cost.</summary>
    Money,

    /// <summary>At how many places a part is changed.</summary>
    Parts,
}
