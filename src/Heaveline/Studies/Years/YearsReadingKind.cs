namespace Heaveline.Studies;

/// <summary>What a workshop reads off an empty car in a minute.</summary>
public enum YearsReadingKind
{
    /// <summary>How much lower the front stands than when the car was described, m.</summary>
    FrontSinking,

    /// <summary>The same of the rear, m.</summary>
    RearSinking,

    /// <summary>How much more the rear has sunk than the front, m.</summary>
    RearMoreThanFront,

    /// <summary>Swings of the front, pushed down and let go, until a tenth is left.</summary>
    FrontSwings,

    /// <summary>The same of the rear.</summary>
    RearSwings,
}
