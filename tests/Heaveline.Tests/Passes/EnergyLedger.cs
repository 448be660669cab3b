using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Tests.Passes;

/// <summary>
/// Keeps the books of a pass from its recorded traces: forces times velocities, by the trapezium rule. The elastic and the damping part of the
/// suspension force are told apart by the elements themselves: the force at the same travel with nothing moving is the elastic one. Friction's
/// sliders are followed from sample to sample, which must be one step apart: what they give way by is heat, the rest is held.
/// </summary>
internal sealed class EnergyLedger(RideModel model)
{
    private readonly PlainMotion standing = new(model.Numbers);
    private double[]? before;

    public double RoadWork { get; private set; }

    public double Dissipated { get; private set; }

    public double Stored { get; private set; }

    /// <summary>Sum of the sizes of all exchanges, J: what the balance is measured against.</summary>
    public double Turnover { get; private set; }

    public double LeastDissipation { get; private set; }

    public void Add(ReadOnlySpan<double> s, Quad<ScalarLane> road, Quad<ScalarLane> roadRate, double step)
    {
        var n = model.Numbers;
        double[] travel = new double[4], rate = new double[4];
        for (var i = 0; i < 4; i++)
        {
            travel[i] = n.TrimTravel[i] + s[Channel.Wheel + i] - (s[Channel.Heave] - (n.X[i] * s[Channel.Pitch]) + (n.Y[i] * s[Channel.Roll]));
            rate[i] = s[Channel.Rates + Channel.Wheel + i] - (s[Channel.Rates] - (n.X[i] * s[Channel.Rates + 1]) + (n.Y[i] * s[Channel.Rates + 2]));
        }

        double[] gone = [n.TrimFlow[0] + s[Channel.Flow], n.TrimFlow[1] + s[Channel.Flow + 1]];
        standing.Push(travel, new double[4], gone, new double[2], rubs: false);
        double[] still = [.. standing.Force];
        standing.Push(travel, new double[4], gone, new double[2]);
        double roadPower = 0.0, heat = 0.0, springs = 0.0, kinetic = 0.0;
        for (var i = 0; i < 4; i++)
        {
            var whole = s[Channel.Force + i] + n.TrimForce[i];
            var elastic = still[i];
            var friction = standing.Force[i] - elastic;
            heat += (whole - elastic - friction) * rate[i];
            springs += (elastic - n.TrimForce[i] + friction) * rate[i];
            // The tyre's change of load over its own compression rate: all of it, damping included; weights cancel against trim.
            var tyre = s[Channel.Tyre + i];
            var wheel = s[Channel.Rates + Channel.Wheel + i];
            roadPower += tyre * roadRate.At(i).Value;
            springs += tyre * (roadRate.At(i).Value - wheel)
                - TyreHeat(n, i, tyre, road.At(i).Value - s[Channel.Wheel + i], roadRate.At(i).Value - wheel);
            heat += TyreHeat(n, i, tyre, road.At(i).Value - s[Channel.Wheel + i], roadRate.At(i).Value - wheel);
        }

        heat += standing.Rubbed / step;
        springs -= standing.Rubbed / step;
        if (n.Elements.Line is { } line)
        {
            for (var side = 0; side < 2; side++)
            {
                var flow = s[Channel.Rates + Channel.Flow + side];
                heat += line.Resistance * flow * flow;
                // Fluid moving from front to rear does work at both ends: pressure difference times flow leaves the springs' books.
                springs -= (Pressure(n, travel, s, side) - Pressure(n, travel, s, side + 2)) * flow;
                kinetic += line.Inertance * flow * s[Channel.Accelerations + Channel.Flow + side];
            }
        }

        kinetic += Kinetic(n, s) - (n.PitchGravity * s[Channel.Pitch] * s[Channel.Rates + 1])
            - (n.RollGravity * s[Channel.Roll] * s[Channel.Rates + 2]);
        double[] now = [roadPower, heat, springs + kinetic];
        if (before is { } last)
        {
            RoadWork += 0.5 * step * (now[0] + last[0]);
            Dissipated += 0.5 * step * (now[1] + last[1]);
            Stored += 0.5 * step * (now[2] + last[2]);
            Turnover += 0.5 * step * (Math.Abs(now[0]) + Math.Abs(now[1]) + Math.Abs(now[2]));
            LeastDissipation = Math.Min(LeastDissipation, now[1] + 1e-9);
        }

        before = now;
    }

    private static double TyreHeat(RideNumbers n, int i, double change, double compression, double rate) =>
        change <= -n.TrimLoad[i] ? 0.0 : n.TyreDamping[i] * rate * rate;

    private static double Pressure(RideNumbers n, double[] travel, ReadOnlySpan<double> s, int i)
    {
        var accumulator = n.Elements.Accumulators[i];
        ReadOnlySpan<double> flow = [n.TrimFlow[0] + s[Channel.Flow], n.TrimFlow[1] + s[Channel.Flow + 1]];
        return accumulator.StandingAt(accumulator.Sight.Of(travel, flow));
    }

    // Power into the moving masses: force by mass times acceleration, independent of the force laws.
    private static double Kinetic(RideNumbers n, ReadOnlySpan<double> s)
    {
        var a = s[Channel.Accelerations..];
        var v = s[Channel.Rates..];
        var power = (n.Body.Mass * a[0] * v[0]) + (n.Body.PitchInertia * a[1] * v[1]) + (n.Body.RollInertia * a[2] * v[2])
            - (n.Body.InertiaProduct * ((a[1] * v[2]) + (a[2] * v[1])));
        for (var left = 0; left < 4; left += 2)
        {
            // Wheel ends of a solid axle share mass: the inverse of [own across; across own].
            var own = n.PerWheel[left];
            var across = n.AcrossAxle[left];
            var det = (own * own) - (across * across);
            var (al, ar) = (a[Channel.Wheel + left], a[Channel.Wheel + left + 1]);
            power += ((((own * al) - (across * ar)) * v[Channel.Wheel + left]) + (((own * ar) - (across * al)) * v[Channel.Wheel + left + 1])) / det;
        }

        return power;
    }
}
