namespace Heaveline.Drives.Comparison;

/// <summary>What before and after say of a change.</summary>
public enum ComparisonVerdict
{
    /// <summary>Too few passes over bumps that both drives crossed.</summary>
    TooFew,

    /// <summary>The two drives were not driven alike: their speeds do not meet.</summary>
    NotAlike,

    /// <summary>The number fell, and the interval reaches what matters.</summary>
    Worked,

    /// <summary>The number fell, but the whole interval is smaller than what matters.</summary>
    FellLittle,

    /// <summary>The whole interval is smaller than what matters, with nothing in it.</summary>
    NoDifference,

    /// <summary>The number rose, but the whole interval is smaller than what matters.</summary>
    RoseLittle,

    /// <summary>The number rose, and the interval reaches what matters.</summary>
    Worse,

    /// <summary>The interval holds nothing and what matters: more passes are needed.</summary>
    CannotSay,

    /// <summary>The sites answer the change differently: here the number fell, there it rose.</summary>
    SitesDiffer,
}
