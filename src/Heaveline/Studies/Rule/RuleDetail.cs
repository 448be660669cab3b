namespace Heaveline.Studies;

/// <summary>How finely a rule is mapped. Counts of values are one more than a multiple of three, so that the plain car is among them.</summary>
public sealed record RuleDetail
{
    /// <summary>Enough to read, in some seconds.</summary>
    public static RuleDetail Plain { get; } = new() { Values = 25, Speeds = 21 };

    /// <summary>Enough to print large.</summary>
    public static RuleDetail Fine { get; } = new() { Values = 61, Speeds = 201 };

    /// <summary>For whoever waits for it: a coarse map comes first, then the whole one.</summary>
    public static RuleDetail Stepwise { get; } = new() { Values = 49, Speeds = 81, LoadSpeeds = 15, First = (13, 11) };

    /// <summary>Values that are tried, at least 2.</summary>
    public required int Values { get; init; }

    /// <summary>Speeds, at least 2.</summary>
    public required int Speeds { get; init; }

    /// <summary>Speeds of the coarser maps that tell what speed another load suits, where the map has not fewer itself.</summary>
    public int LoadSpeeds { get; init; } = 21;

    /// <summary>Values and speeds of a map that comes before; null for none.</summary>
    public (int Values, int Speeds)? First { get; init; }
}
