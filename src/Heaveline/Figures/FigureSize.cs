namespace Heaveline.Figures;

/// <summary>
/// How wide a figure is printed: one column or the whole width of an A4 page, as journals commonly ask (common practice, no single source).
/// </summary>
public enum FigureSize
{
    /// <summary>One column of a two-column page, 84 mm.</summary>
    Column,

    /// <summary>The whole text width of a page, 174 mm.</summary>
    Page,
}
