using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>A damper at one setting of its adjuster, as a rig measured it.</summary>
/// <param name="Number">The click, counted as the maker counts. 0 to 200.</param>
/// <param name="Law">Its forces.</param>
public sealed record DamperClick(int Number, TableDamper Law)
{
    /// <summary>The click.</summary>
    public int Number { get; init; } = (int)Checked.Within(Number, 0.0, 200.0, "Count the clicks as the maker does, from 0 or 1.", "click");
}
