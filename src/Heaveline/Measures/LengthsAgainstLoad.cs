using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>The installed length of a spring that was weighed, against what its free length, its rate and the load on it make it; all in m.</summary>
/// <param name="Installed">As measured.</param>
/// <param name="ByRate">Free length less the load over the rate.</param>
/// <param name="Doubt">Half-width of both doubts together, and of the rate's; at least a millimetre, which nobody measures better.</param>
public sealed record LengthsAgainstLoad(double Installed, double ByRate, double Doubt)
{
    private const double Least = 1e-3;

    /// <summary>Of an axle; null where not both lengths are given.</summary>
    /// <param name="model">The car under any load.</param>
    /// <param name="end">Which axle.</param>
    public static LengthsAgainstLoad? Of(RideModel model, AxleEnd end)
    {
        ArgumentNullException.ThrowIfNull(model);
        var spring = model.Car.Axles[(int)end].Spring;
        var weighed = spring.Swap?.Before ?? spring;
        if (weighed is not { FreeLength: { } free, InstalledLength: { } installed }
            || model.Numbers.Elements.Stances[2 * (int)end] is not { } stance
            || CoilForce.Under(weighed.Law, stance.WeighedMean) is not { } compression)
        {
            return null;
        }

        var part = weighed.Law switch
        {
            LinearSpring { Rate: var rate } => rate.Doubt.HalfWidth / rate.Si,
            TableSpring { Table.Factor: var factor } => factor.Doubt.HalfWidth / factor.Si,
            _ => 0.0,
        };
        var squares = Square(free.Doubt.HalfWidth) + Square(installed.Doubt.HalfWidth) + Square(part * compression);
        return new LengthsAgainstLoad(installed.Si, free.Si - compression, Math.Max(Least, Math.Sqrt(squares)));
    }

    /// <summary>
    /// How long the spring that was weighed would stand between its seats by its free length, its rate and the load on it, m; null where its
    /// installed length was measured, or nothing is said of its free one.
    /// </summary>
    /// <param name="model">The car under any load.</param>
    /// <param name="end">Which axle.</param>
    public static double? StandingByFree(RideModel model, AxleEnd end)
    {
        ArgumentNullException.ThrowIfNull(model);
        var spring = model.Car.Axles[(int)end].Spring;
        var weighed = spring.Swap?.Before ?? spring;
        return weighed is { FreeLength: { } free, InstalledLength: null } && model.Numbers.Elements.Stances[2 * (int)end] is { } stance
            ? free.Si - CoilForce.Under(weighed.Law, stance.WeighedMean)
            : null;
    }

    private static double Square(double x) => x * x;
}
