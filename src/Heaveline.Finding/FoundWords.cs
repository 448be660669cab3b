using Heaveline.Measures;

namespace Heaveline.Finding;

/// <summary>A number of a car that was found, in words.</summary>
public static class FoundWords
{
    /// <summary>"1.12 under 'driver' (on a bump stop)".</summary>
    /// <param name="file">The car's file.</param>
    /// <param name="measure">What the number is.</param>
    /// <param name="number">The number.</param>
    public static string Of(FoundFile file, Measure measure, IndexedNumber number)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(measure);
        ArgumentNullException.ThrowIfNull(number);
        return $"{measure.Print(measure.Unit.Of(number.Value))}{measure.Unit.Suffix} "
            + (number.Load == "empty" ? "empty" : $"under '{number.Load}'") + Stands(file, number.Load);
    }

    // Rate and frequency there are the stops' as much as the springs'.
    private static string Stands(FoundFile file, string load) =>
        file.Numbers.Any(n => n.Load == load && n.Key is ("front-bump-left" or "rear-bump-left") && n.Value < 0.0) ? " (on a bump stop)" : "";
}
