using System.Collections.Immutable;
using Heaveline.Worksheets;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A wheel raised and lowered on a jack that stands on a scale, to be worked out.</summary>
public sealed record WheelRateAsked : SheetAsked
{
    /// <summary>The stops going up and coming down.</summary>
    public required ImmutableArray<JackReading> Readings { get; init => field = Drawable.Any(value); }

    /// <summary>Gap between wheel centre and wing in the state described, m; null when not known.</summary>
    public Amount<Length>? Rest { get; init; }

    /// <summary>Whether both wheels of the axle were raised together.</summary>
    public bool BothWheels { get; init; }
}
