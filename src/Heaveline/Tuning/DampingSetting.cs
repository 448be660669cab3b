using Heaveline.Cars;

namespace Heaveline.Tuning;

/// <summary>How strong one axle's dampers are, as a multiple of what is described: every force of a table, or the damping ratio.</summary>
internal sealed record DampingSetting(AxleEnd End) : Setting($"{End.Key()}-damping", $"{End.Name()} damping")
{
    private const string Times = "× described";

    /// <inheritdoc/>
    public override SettingScale? ScaleOf(Car described) =>
        new(Times, 1.0, 0.20, 3.00, 0.01, described.At(End).Damper.Law is RatioDamper ? "given as a ratio, so that it follows the spring" : "");

    /// <inheritdoc/>
    public override Car Apply(Car car, double value)
    {
        var factor = NotNegative(value, Times, "1 is the damper as described, 0 none.");
        var axle = car.At(End);
        DamperLaw law = axle.Damper.Law switch
        {
            RatioDamper ratio => ratio with { Ratio = AsDoubtful(ratio.Ratio, Math.Round(ratio.Ratio.Si * factor, 4)) },
            TableDamper table => new TableDamper(Stronger(table.Bump, factor), Stronger(table.Rebound, factor)),
            var other => throw new NotSupportedException($"No way is known to set a {other.GetType().Name}."),
        };
        return car.With(End, axle with { Damper = axle.Damper with { Law = law } });
    }

    // A damper bench reads to a newton.
    private static ForceTable Stronger(ForceTable side, double factor) =>
        new(side.At, [.. side.Force.Select(f => Math.Round(f * factor))], side.Factor);
}
