namespace Heaveline.Drives;

/// <summary>How far a log bears a use.</summary>
public enum TrustLevel
{
    /// <summary>It bears it.</summary>
    Good,

    /// <summary>It bears a part of it, or with a caution.</summary>
    Limited,

    /// <summary>It does not bear it.</summary>
    None,
}
