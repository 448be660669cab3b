namespace Heaveline.Press.Paper;

/// <summary>The sheet that a report is set for.</summary>
public enum PaperSize
{
    /// <summary>ISO 216 A4, 210 by 297 mm.</summary>
    A4,

    /// <summary>US Letter, 8.5 by 11 in.</summary>
    Letter,
}
