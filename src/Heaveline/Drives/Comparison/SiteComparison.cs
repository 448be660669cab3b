namespace Heaveline.Drives.Comparison;

/// <summary>Before and after over one site.</summary>
public sealed record SiteComparison
{
    /// <summary>The site.</summary>
    public required string Site { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>How its speeds meet.</summary>
    public required SpeedMatch Speeds { get; init; }

    /// <summary>Passes before the change that count.</summary>
    public required int Before { get; init; }

    /// <summary>Passes after the change that count.</summary>
    public required int After { get; init; }

    /// <summary>What the change did here; null where nothing is compared here.</summary>
    public EffectInterval? Effect { get; init; }

    /// <summary>Standard deviation of one pass's logarithm here; NaN where nothing is compared here.</summary>
    public double Scatter { get; init; } = double.NaN;

    /// <summary>The verdict here, from this site's own interval.</summary>
    public required ComparisonVerdict Verdict { get; init; }
}
