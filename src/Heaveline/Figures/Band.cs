using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A shaded span of the x axis ("hit", "settling").</summary>
public sealed record Band
{
    /// <summary>Where it begins, in the unit of the x axis.</summary>
    public required double From { get; init => field = Drawable.Finite(value); }

    /// <summary>Where it ends, in the unit of the x axis; above <see cref="From"/>.</summary>
    public required double To
    {
        get;
        init => field = Drawable.Finite(value) is var end && end > From ? end : throw new RefusedValueException(
            "end of the band", $"{value:G6}", $"above its beginning, {From:G6}", "Give the beginning first, then the end.");
    }

    /// <summary>What the span is, over the panel. Blank for none.</summary>
    public string Label { get; init => field = value ?? ""; } = "";

    /// <summary>How it is shaded.</summary>
    public BandShade Shade { get; init; } = BandShade.LightGrey;
}
