namespace Heaveline.Figures;

/// <summary>One number before a change and after it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Before">Before, with its interval where it has one.</param>
/// <param name="After">After; null where there is but one.</param>
/// <param name="IsLessBetter">Whether less is better, or more; null where neither is.</param>
public sealed record PairedValue(string Name, string Unit, CategoryValue Before, CategoryValue? After, bool? IsLessBetter)
{
    /// <summary>Whether the change makes it worse by more than a hundredth.</summary>
    internal bool IsWorse => After is { } after && IsLessBetter is { } less
        && (less ? after.Value - Before.Value : Before.Value - after.Value) > 0.01 * Math.Abs(Before.Value);
}
