using Heaveline.Cars;

namespace Heaveline.Tuning;

/// <summary>Springs and dampers made stiffer by a factor, each in its own terms.</summary>
internal static class ScaledLaws
{
    /// <summary>
    /// The same law with its travel axis pressed together about the reference state: every slope times the factor, the same load carried.
    /// </summary>
    public static SpringLaw Stiffer(SpringLaw law, double factor) => law switch
    {
        LinearSpring spring => spring with { Rate = spring.Rate.Times(factor) },
        GasSpring gas => gas with { Volume = gas.Volume.Times(1.0 / factor) },
        TableSpring table => new TableSpring(new ForceTable([.. table.Table.At.Select(x => x / factor)], table.Table.Force, table.Table.Factor)),
        _ => throw new NotSupportedException($"No way is known to make a {law.GetType().Name} stiffer."),
    };

    /// <summary>The same law with every force times the factor.</summary>
    public static DamperLaw Stronger(DamperLaw law, double factor) => law switch
    {
        RatioDamper damper => damper with { Ratio = damper.Ratio.Times(factor) },
        TableDamper table => new TableDamper(Times(table.Bump, factor), Times(table.Rebound, factor)),
        _ => throw new NotSupportedException($"No way is known to make a {law.GetType().Name} stronger."),
    };

    private static ForceTable Times(ForceTable side, double factor) => new(side.At, [.. side.Force.Select(f => f * factor)], side.Factor);
}
