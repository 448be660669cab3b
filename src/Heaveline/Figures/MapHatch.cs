using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A range of values hatched on a map: where the choice "makes no difference".</summary>
public sealed record MapHatch
{
    /// <summary>Lower end, in the unit of the measure.</summary>
    public required double From { get; init => field = Drawable.Finite(value); }

    /// <summary>Upper end, in the unit of the measure; above <see cref="From"/>.</summary>
    public required double To
    {
        get;
        init => field = Drawable.Finite(value) is var end && end > From ? end : throw new RefusedValueException(
            "end of the hatched range", $"{value:G6}", $"above its beginning, {From:G6}", "Give the beginning first, then the end.");
    }

    /// <summary>What the hatching means, named over the map.</summary>
    public required string Label { get; init => field = Checked.NotBlank(value, "Say what the hatching means."); }
}
