using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of a kit: how far its parts may be off for fitted cars to keep what its maker promises.</summary>
public sealed record ToleranceAsked
{
    private const string Some = "Give the tolerances that parts can be had to.";

    /// <summary>The car with the kit as designed, under its load; what else of it is in doubt is how the cars differ that it is fitted to.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>What is promised, at least one number.</summary>
    public required IReadOnlyList<MeasureBound> Promises
    {
        get;
        init => field = value is { Count: > 0 } && value.All(p => p.Measure is Measure<CarAtRest> or Measure<Pass>)
            ? value
            : throw new RefusedValueException(
                "promise", "none", "at least one, of a standing car or of a pass", "Say what a fitted car keeps (\"ratio at least 1.05\").");
    }

    /// <summary>Tolerances of spring rates, tightest first.</summary>
    public IReadOnlyList<ToleranceLevel> Springs { get; init => field = NotEmpty(value, "springs"); } = Usual(0.01, 0.02, 0.03, 0.05, 0.08);

    /// <summary>Tolerances of damper forces, tightest first.</summary>
    public IReadOnlyList<ToleranceLevel> Dampers { get; init => field = NotEmpty(value, "dampers"); } = Usual(0.03, 0.05, 0.08, 0.12, 0.20);

    /// <summary>Tolerances of the heights over the axles, m, tightest first.</summary>
    public IReadOnlyList<ToleranceLevel> Heights { get; init => field = NotEmpty(value, "heights"); } = Usual(0.002, 0.003, 0.005, 0.008, 0.012);

    /// <summary>Of how many fitted cars so many must keep the promise (–), 0.5 to 0.999.</summary>
    public double Share { get; init => field = Checked.Within(value, 0.5, 0.999, "0.95 is 95 of 100 fitted cars."); } = 0.95;

    /// <summary>The road of promises that are of a pass; null for none.</summary>
    public Road? Road { get; init; }

    /// <summary>Speed over that road, m/s.</summary>
    public double Speed { get; init; } = In.KilometresPerHour.ToSi(50.0);

    /// <summary>How many fitted cars are drawn, 100 to 20 000.</summary>
    public int Draws { get; init => field = (int)Checked.Within(value, 100.0, 20_000.0, "400 tell 95 of 100 from 97."); } = 400;

    /// <summary>Seed of the draws.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Whether every tolerance has its price.</summary>
    public bool HasPrices => Springs.Concat(Dampers).Concat(Heights).All(l => l.Price is not null);

    private static IReadOnlyList<ToleranceLevel> NotEmpty(IReadOnlyList<ToleranceLevel> levels, string what) => levels is { Count: > 0 }
        ? levels
        : throw new RefusedValueException($"tolerances of {what}", "none", "at least one", Some);

    private static IReadOnlyList<ToleranceLevel> Usual(params double[] widths) => [.. widths.Select(w => new ToleranceLevel(w))];
}
