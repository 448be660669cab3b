using Heaveline.Quantities;
using Heaveline.Worksheets;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Measures;

/// <summary>Words for what a workshop reads.</summary>
internal static class WorkshopReadingWords
{
    /// <summary>With which errors readings are taken, a sentence.</summary>
    public static string Errors { get; } =
        Text($"Readings are taken with errors: heights, each the mean of left and right, ± {In.Millimetres.Of(WorkshopReadings.Tape):0.#} mm by ")
        + Text($"tape, swings ± {BounceSheet.HandCount} by count (common practice, no source), and friction may hold the car anywhere in its band ")
        + "of heights.";

    /// <summary>Name of a reading for machines.</summary>
    public static string Id(WorkshopReading reading) => reading switch
    {
        WorkshopReading.FrontHeight => "front-height",
        WorkshopReading.RearHeight => "rear-height",
        WorkshopReading.RearOverFront => "rear-over-front",
        WorkshopReading.FrontSinking => "front-sinking",
        WorkshopReading.RearSinking => "rear-sinking",
        WorkshopReading.RearMoreThanFront => "rear-more-than-front",
        WorkshopReading.FrontSwings => "front-swings",
        WorkshopReading.RearSwings => "rear-swings",
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, null),
    };
}
