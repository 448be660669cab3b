using System.Collections.Immutable;

namespace Heaveline.Figures;

/// <summary>Values of named things, one row each, as bars or dots along one axis.</summary>
public sealed record CategoryPanel : Panel
{
    /// <summary>The axis of the values, horizontal.</summary>
    public required Axis Value { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Bars from zero, or dots.</summary>
    public CategoryStyle Style { get; init; } = CategoryStyle.Bars;

    /// <summary>The things from top to bottom, at least one.</summary>
    public required ImmutableArray<Category> Categories { get; init => field = Drawable.Some(value, "Give at least one category."); }

    /// <summary>Lines up the panel at a value that matters; <see cref="Limit.Direction"/> is not looked at.</summary>
    public ImmutableArray<Limit> Limits { get; init => field = Drawable.Any(value); } = [];
}
