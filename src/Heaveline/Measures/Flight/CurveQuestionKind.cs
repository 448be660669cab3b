namespace Heaveline.Measures;

/// <summary>What can be asked of a curve in flight.</summary>
internal enum CurveQuestionKind
{
    /// <summary>∫x² over a stretch.</summary>
    Squares,

    /// <summary>Least and greatest value in a stretch.</summary>
    Range,

    /// <summary>Largest change between two samples.</summary>
    Farthest,

    /// <summary>How many samples are at most 0.</summary>
    Nothing,

    /// <summary>The last fall through a share of the peak.</summary>
    LastAbove,

    /// <summary>Turning points above a share of the peak.</summary>
    Lobes,
}
