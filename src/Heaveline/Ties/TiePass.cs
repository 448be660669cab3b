using System.Collections.Immutable;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Ties;

/// <summary>One crossing of the obstacle at one speed, with what its ties showed.</summary>
public sealed record TiePass
{
    /// <summary>Doubt of a speed that states none, a part of it, half-width: common practice, no source.</summary>
    public const double UsualDoubt = 0.05;

    /// <summary>Speed, m/s. Without a doubt good to <see cref="UsualDoubt"/>.</summary>
    public required Amount<Velocity> Speed
    {
        get;
        init => field = Checked.Within(value, DrivingSpeed.Slowest, DrivingSpeed.Fastest, "Drive over the obstacle at a steady speed.", "Speed");
    }

    /// <summary>The ties, at least one, no place twice.</summary>
    public required ImmutableArray<TieReading> Readings
    {
        get;
        init => field = value.Select(r => r.Place).Distinct().Count() == value.Length && value.Length > 0
            ? value
            : throw new RefusedValueException(
                "ties of a pass", value.Length == 0 ? "none" : "one place twice", "one for each place read", "Give each place once in a pass.");
    }

    /// <summary>One standard deviation of the speed's logarithm.</summary>
    internal double Spread => 0.5 * (Speed.Doubt.IsStated ? Speed.Doubt.HalfWidth / Speed.Si : UsualDoubt);
}
