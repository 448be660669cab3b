using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>One row of a category panel: a thing with a value, or several to compare.</summary>
public sealed record Category
{
    /// <summary>The thing's name, left of its row.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Name the category."); }

    /// <summary>Its values, at least one.</summary>
    public required ImmutableArray<CategoryValue> Values { get; init => field = Drawable.Some(value, "Give the category a value."); }
}
