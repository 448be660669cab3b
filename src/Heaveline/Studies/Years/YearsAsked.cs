using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>What is asked of a car's years: from when on it is more likely than not no longer what it was.</summary>
public sealed record YearsAsked
{
    /// <summary>The car under the load in question, with the doubts of its measurements.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>What a year takes from it.</summary>
    public required YearlyWear Wear
    {
        get;
        init => field = value is { IsAny: true }
            ? value
            : throw new RefusedValueException(
                "yearly wear",
                "nothing",
                "at least one loss a year",
                "Give how much lower an end comes to stand a year, or how much force its dampers lose: two measurings years apart tell.");
    }

    /// <summary>How many years are looked ahead, 1 to 50.</summary>
    public int Years { get; init => field = (int)Checked.Within(value, 1.0, 50.0, "Look a car's life ahead."); } = 15;

    /// <summary>A road over which its stops are watched as well; null: standing alone.</summary>
    public Road? Road { get; init; }

    /// <summary>Speed over that road, m/s.</summary>
    public double Speed { get; init; } = In.KilometresPerHour.ToSi(50.0);

    /// <summary>How many cars are drawn, 50 to 20 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 50.0, 20_000.0, "400 tell a chance to ± 5 %."); } = 400;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The load that asks most of a car's springs: its heaviest, or empty where it has none.</summary>
    internal static LoadState Heaviest(Car car) => NeutralLoad.Heaviest(car.LoadStates);
}
