using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked when a car is to pitch less: which car, over which road, how fast, and what there is to be less of.</summary>
public sealed record CureAsked
{
    /// <summary>The car as described, under its load.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The road.</summary>
    public required Road Road { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Speed, m/s, 0.5 to 120.</summary>
    public required double Speed { get; init; }

    /// <summary>What is to be less.</summary>
    public CureAim Aim { get; init; }

    /// <summary>How many cars are drawn where the car states doubts, 10 to 100 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 10.0, 1e5, "200 tell a chance to about 3 in 100."); } = 200;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;
}
