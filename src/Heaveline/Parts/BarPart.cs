using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>An anti-roll bar with one hole or more for its links.</summary>
public sealed record BarPart : Part
{
    /// <summary>Its holes, each name once.</summary>
    public required IReadOnlyList<BarHole> Holes
    {
        get;
        init
        {
            if (value is null || value.Count == 0 || value.Select(hole => hole.Name).Distinct(StringComparer.Ordinal).Count() < value.Count)
            {
                throw new RefusedValueException(
                    "holes", value is { Count: > 0 } ? "named twice" : "none", "one or more, each name once", "Name the holes inner and outer.");
            }

            field = [.. value];
        }
    }

    /// <inheritdoc/>
    public override PartSort Sort => PartSort.Bar;

    /// <summary>Every hole.</summary>
    public override IReadOnlyList<PartOption> Options => [.. Holes.Select(hole => new PartOption(this)
    {
        Hole = Holes.Count > 1 ? hole.Name : null,
        BarRate = Own(hole.WheelRate, "rate"),
    })];

    /// <summary>No bar, in place of the one that is there: it costs nothing.</summary>
    public static BarPart Without { get; } = new() { Name = "no bar", Price = Money.None, Holes = [new("none", new(0.0))] };

    /// <summary>The bar with its links in a hole.</summary>
    /// <param name="hole">Its name.</param>
    /// <exception cref="RefusedValueException">No such hole.</exception>
    public PartOption At(string hole) => Holes.Index().FirstOrDefault(h => h.Item.Name == hole) is { Item: not null, Index: var i }
        ? Options[i]
        : throw new RefusedValueException(
            $"hole of {Name}", hole, $"one of {string.Join(", ", Holes.Select(h => h.Name))}", "Choose a hole that the bar has.");
}
