namespace Heaveline.Measures;

/// <summary>Where a measure is taken up, beside the glossary that holds them all.</summary>
[Flags]
public enum MeasureUse
{
    /// <summary>Nowhere by itself.</summary>
    None = 0,

    /// <summary>In the whole table of its subject.</summary>
    Table = 1,

    /// <summary>Among the few that are set before and after on a page.</summary>
    BeforeAfter = 2,

    /// <summary>Followed through the doubts of one car.</summary>
    Doubt = 4,

    /// <summary>Followed through the doubts of cars that are compared.</summary>
    Comparison = 8,

    /// <summary>Among the ten or so that are printed when nobody asks for all.</summary>
    Short = 16,

    /// <summary>Wherever a measure can be, but among the few that are printed first: those are chosen one by one.</summary>
    Everywhere = Table | BeforeAfter | Doubt | Comparison,
}
