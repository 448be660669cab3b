using System.Collections.Immutable;
using Heaveline.Worksheets;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A weighing to be worked out.</summary>
public sealed record WeighAsked : SheetAsked
{
    /// <summary>The rounds of readings.</summary>
    public required ImmutableArray<WheelReadings> Rounds { get; init => field = Drawable.Any(value); }

    /// <summary>From front to rear wheel centre, m.</summary>
    public required Amount<Length> Wheelbase { get; init; }

    /// <summary>Front track, m.</summary>
    public required Amount<Length> FrontTrack { get; init; }

    /// <summary>Rear track, m.</summary>
    public required Amount<Length> RearTrack { get; init; }
}
