using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>What a single value must be.</summary>
/// <param name="Words">In words ("above 0 N/mm", "between 0.5 and 10 m").</param>
/// <param name="Least">The lower end, SI units; null when there is none.</param>
/// <param name="Most">The upper end, SI units; null when there is none.</param>
/// <param name="IsOpenBelow">Whether the lower end itself is refused.</param>
internal sealed record ValueLimit(string Words, double? Least, double? Most, bool IsOpenBelow = false)
{
    /// <summary>The limit that a record stated, in its own words.</summary>
    public static ValueLimit Of(RefusedValueException refused) =>
        new(refused.Limit, refused.Least is { } least && double.IsFinite(least) ? least : null, refused.Most, refused.IsOpenBelow);
}
