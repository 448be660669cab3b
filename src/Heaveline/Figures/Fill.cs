namespace Heaveline.Figures;

/// <summary>What the inside of a closed shape is filled with.</summary>
public enum Fill
{
    /// <summary>Nothing: what lies behind shows.</summary>
    None,

    /// <summary>White, which covers what lies behind.</summary>
    White,

    /// <summary>Light grey.</summary>
    LightGrey,

    /// <summary>A grey one step darker.</summary>
    Grey,

    /// <summary>A pale tint of the pen's ink.</summary>
    Tint,

    /// <summary>The pen's ink in full.</summary>
    Full,
}
