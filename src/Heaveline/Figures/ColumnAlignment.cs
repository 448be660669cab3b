namespace Heaveline.Figures;

/// <summary>How the cells of a table column stand.</summary>
public enum ColumnAlignment
{
    /// <summary>Flush left, for words.</summary>
    Left,

    /// <summary>Flush right, for numbers of equal decimals.</summary>
    Right,

    /// <summary>Centred.</summary>
    Centre,
}
