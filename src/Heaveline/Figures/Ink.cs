namespace Heaveline.Figures;

/// <summary>The colour of a curve, by rank. The five also differ in lightness, so that they keep apart when printed in grey.</summary>
public enum Ink
{
    /// <summary>The curve the figure is about: the cool ink.</summary>
    First,

    /// <summary>What it is compared with: the warm ink.</summary>
    Second,

    /// <summary>Near black.</summary>
    Third,

    /// <summary>Middle grey.</summary>
    Fourth,

    /// <summary>Light grey, for what stands behind.</summary>
    Fifth,
}
