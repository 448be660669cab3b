using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// How stiff one axle's springs are. A spring of constant rate is set by that rate, at the spring or at the wheel, as its file has it; a table or a
/// gas spring by how many times as stiff it is as described, the load that it carries kept.
/// </summary>
internal sealed record SpringSetting(AxleEnd End) : Setting($"{End.Key()}-spring", $"{End.Name()} spring")
{
    private const string Times = "× described";
    private const string Rate = "N/mm";

    /// <inheritdoc/>
    public override SettingScale? ScaleOf(Car described) => described.At(End).Spring.Law switch
    {
        LinearSpring spring => SettingScale.About(Rounded.Significant(spring.Rate.Si / 1000.0, 5), Rate, 0.4, 2.5),
        GasSpring => new SettingScale(Times, 1.0, 0.40, 2.50, 0.01, "the gas volume is what changes"),
        _ => new SettingScale(Times, 1.0, 0.40, 2.50, 0.01, "the whole table, the same load carried"),
    };

    /// <inheritdoc/>
    public override Car Apply(Car car, double value)
    {
        var axle = car.At(End);
        SpringLaw law = axle.Spring.Law switch
        {
            LinearSpring spring => new LinearSpring
            {
                Rate = AsDoubtful(spring.Rate, 1000.0 * Rounded.Significant(Positive(value, Rate, "Give the rate of one spring."), 5)),
                Origin = "as set",
            },
            GasSpring gas => gas with
            {
                Volume = AsDoubtful(
                    gas.Volume,
                    Rounded.Significant(1000.0 * gas.Volume.Si / Positive(value, Times, "1 is the spring as described."), 4) / 1000.0),
            },
            TableSpring table => new TableSpring(new ForceTable(
                [.. table.Table.At.Select(x => Rounded.In(x / Positive(value, Times, "1 is the spring as described."), 1e-3, 2))],
                table.Table.Force,
                table.Table.Factor)),
            var other => throw new NotSupportedException($"No way is known to set a {other.GetType().Name}."),
        };
        return car.With(End, axle with { Spring = axle.Spring.WithLaw(law) });
    }

    /// <summary>The value that gives the axle a ride frequency, the other axle held.</summary>
    /// <param name="model">The car under its load, with everything else as set.</param>
    /// <param name="described">The car as described.</param>
    /// <param name="hertz">Frequency with the tyres, Hz.</param>
    /// <exception cref="RefusedValueException">The springs cannot make it.</exception>
    public double ValueFor(RideModel model, Car described, double hertz)
    {
        var now = RideTuning.Of(model);
        Within(hertz, 0.2, 6.0, "Hz", "Road cars lie between 0.9 and 2.2 Hz.");
        var wanted = End == AxleEnd.Front ? now with { FrontFrequency = hertz } : now with { RearFrequency = hertz };
        return (wanted.ApplyTo(model, lengthsKept: true).Car.At(End).Spring.Law, described.At(End).Spring.Law) switch
        {
            (LinearSpring spring, _) => spring.Rate.Si / 1000.0,
            (GasSpring gas, GasSpring first) => first.Volume.Si / gas.Volume.Si,
            (TableSpring table, TableSpring first) => Span(first) / Span(table),
            var (law, _) => throw new NotSupportedException($"No way is known to set a {law.GetType().Name}."),
        };
    }

    private static double Span(TableSpring table) => table.Table.At[^1] - table.Table.At[0];
}
