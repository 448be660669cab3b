using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>Points of a list, one under the other.</summary>
public sealed record Points : Block
{
    /// <summary>The points from top to bottom, at least one, none blank.</summary>
    public required ImmutableArray<string> Texts
    {
        get;
        init => field = Drawable.Some(value, "Give at least one point.").All(t => !string.IsNullOrWhiteSpace(t))
            ? value
            : throw new RefusedValueException("points", "one is blank", "some text in each", "Leave the empty point out.");
    }

    /// <summary>Whether the points follow one another in time, and are numbered.</summary>
    public bool Numbered { get; init; }

    /// <summary>A list of these points.</summary>
    public static Points Of(IEnumerable<string> texts) => new() { Texts = [.. texts] };

    /// <inheritdoc/>
    public override Block In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return this with { Texts = [.. Texts.Select(units.Text)] };
    }
}
