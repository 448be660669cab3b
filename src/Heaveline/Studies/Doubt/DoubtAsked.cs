using Heaveline.Doubts;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of a car's doubts: how sure its numbers are at rest, and over a road where one is given.</summary>
public sealed record DoubtAsked
{
    /// <summary>The car, with the doubts of its measurements.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The road of a pass whose numbers are followed as well; null for none.</summary>
    public Road? Road { get; init; }

    /// <summary>Speed of that pass, m/s, 0.5 to 120.</summary>
    public double Speed { get; init; } = In.KilometresPerHour.ToSi(50.0);

    /// <summary>How many cars are drawn, 10 to 1 000 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 10.0, 1e6, "2000 tell a band to a few hundredths of itself."); } = 2000;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Whether the car states any doubt: without one all drawn cars are alike.</summary>
    public bool AreStated => CarDoubts.Of(Car.Car, Car.Load).AreStated;
}
