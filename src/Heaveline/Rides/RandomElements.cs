using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// The elements of a car whose forces bend: springs, dampers, stops, friction and gas between the axles. Straight ones stay in the tangent.
/// </summary>
internal static class RandomElements
{
    private const double Unlimited = double.PositiveInfinity;

    public static List<RandomElement> Of(RideModel model)
    {
        var n = model.Numbers;
        var laws = n.Laws;
        var c = RidePacking.Pack<Quad<DualLane>, DualLane>([n]);
        var elements = new List<RandomElement>();
        for (var corner = 0; corner < 4; corner++)
        {
            // Each law keeps the corner of its own turn of the loop.
            var i = corner;
            if (Bends(laws.SpringHinges, i) || laws.GasForce[i] > 0.0 || Varies(laws.SpringRatio, i))
            {
                var breaks = SpringBreaks(laws, i);
                elements.Add(AtPlace(n, i, laws.SpringShare[i], s => Of(ElementForces<Quad<DualLane>, DualLane>.Spring(c, All(s)), i), breaks));
            }

            if (Bends(laws.BumpHinges, i) || Bends(laws.ReboundHinges, i) || laws.CurvedBump[1][i] > 0.0 || laws.CurvedRebound[1][i] > 0.0)
            {
                elements.Add(AtPlace(
                    n, i, laws.StopShare[i], s => Of(ElementForces<Quad<DualLane>, DualLane>.Stops(c, All(s)), i), StopBreaks(laws, i)));
            }

            if (Bends(laws.DamperHinges, i) || Varies(laws.DamperRatio, i))
            {
                elements.Add(new RandomElement(
                    Row(n, i, laws.DamperShare[i]), Trim(n, i, laws.DamperShare[i]), (s, ds, dv) => RandomDamper.Of(laws, i, s, ds, dv)));
            }

            if (laws.Friction[i] > 0.0)
            {
                var scale = Math.Sqrt(laws.FrictionSpeedSquared[i]);
                elements.Add(new RandomElement(
                    Row(n, i, 1.0),
                    n.TrimTravel[i],
                    (_, _, dv) => new(0.0, 0.0, laws.Friction[i] * Gaussian.SmoothSign(dv, scale)),
                    default(ElementMean)));
            }
        }

        AddGasBetweenAxles(n, c, elements);
        return elements;
    }

    // Wheel travel from trim at corner i per position, or travel at an element's place along a solid axle.
    private static double[] Row(RideNumbers n, int i, double share)
    {
        var row = new double[RideSignal.Positions];
        AddTravel(n, row, i, share);
        AddTravel(n, row, i ^ 1, 1.0 - share);
        return row;
    }

    private static void AddTravel(RideNumbers n, double[] row, int i, double share)
    {
        row[0] -= share;
        row[1] += share * n.X[i];
        row[2] -= share * n.Y[i];
        row[3 + i] += share;
    }

    private static double Trim(RideNumbers n, int i, double share) => (share * n.TrimTravel[i]) + ((1.0 - share) * n.TrimTravel[i ^ 1]);

    private static RandomElement AtPlace(RideNumbers n, int i, double share, Func<double, (double, double)> law, double[] breaks) =>
        new(Row(n, i, share), Trim(n, i, share), (mean, deviation, _) => Mean(
            law, mean, deviation, breaks, n.Laws.ReboundLimit[i], n.Laws.BumpLimit[i]));

    private static ElementMean Mean(Func<double, (double, double)> law, double mean, double deviation, double[] breaks, double low, double high)
    {
        var (force, rate) = Gaussian.Of(law, mean, deviation, breaks, low, high);
        return new(force, rate, 0.0);
    }

    private static void AddGasBetweenAxles(RideNumbers n, RideConstants<Quad<DualLane>, DualLane> c, List<RandomElement> elements)
    {
        var laws = n.Laws;
        if ((laws.Needs & Needs.FluidGas) == 0)
        {
            return;
        }

        for (var i = 0; i < (laws.FluidOpen ? 2 : 4); i++)
        {
            var row = new double[RideSignal.Positions];
            var (trim, perVolume) = (0.0, laws.LinkPerVolume);
            if (laws.FluidOpen)
            {
                // One gas volume per side takes what both displacers push out.
                AddTravel(n, row, i, laws.LinkRatio[i]);
                AddTravel(n, row, i + 2, laws.LinkRatio[i + 2]);
                trim = (laws.LinkRatio[i] * n.TrimTravel[i]) + (laws.LinkRatio[i + 2] * n.TrimTravel[i + 2]);
            }
            else
            {
                AddTravel(n, row, i, laws.FluidArea[i]);
                row[7 + (i % 2)] = laws.FluidFlows ? -laws.FluidSign[i] : 0.0;
                trim = (laws.FluidArea[i] * n.TrimTravel[i]) - (laws.FluidSign[i] * n.TrimFlow[i]);
                perVolume = laws.FluidPerVolume[i];
            }

            var corner = i;
            elements.Add(new RandomElement(
                row, trim, (mean, deviation, _) => Mean(w => Pressure(n, c, corner, w), mean, deviation, [], -Unlimited, 0.9 / perVolume)));
        }
    }

    // Pressure with a volume w pushed into the gas, from the kernel's own law: a travel of w over the area at one end.
    private static (double, double) Pressure(RideNumbers n, RideConstants<Quad<DualLane>, DualLane> c, int i, double volume)
    {
        var laws = n.Laws;
        var area = laws.FluidArea[i];
        DualLane At(int corner, double value) => corner == i ? new DualLane(value / area, 1.0 / area) : default;
        Quad<DualLane> Only(double value) => new(At(0, value), At(1, value), At(2, value), At(3, value));
        if (laws.FluidOpen)
        {
            var state = new RideState<Quad<DualLane>, DualLane> { Travel = Only(volume) };
            LinkForces<Quad<DualLane>, DualLane>.Elastic(c, state);
            var force = state.Force.At(i);
            return (force.Value / area, force.Slope / area);
        }

        // The kernel adds the flow at trim: take it off first.
        var still = new RideState<Quad<DualLane>, DualLane> { Travel = Only(volume + (laws.FluidSign[i] * n.TrimFlow[i])) };
        var pressure = LinkForces<Quad<DualLane>, DualLane>.Pressure(c, still).At(i);
        return (pressure.Value, pressure.Slope);
    }

    private static Quad<DualLane> All(double travel) => Quad<DualLane>.All(new DualLane(travel, 1.0));

    private static (double, double) Of(Quad<DualLane> quad, int i) => (quad.At(i).Value, quad.At(i).Slope);

    private static bool Bends(Hinges hinges, int i) => hinges.Bend.Any(b => b[i] != 0.0);

    private static bool Varies(double[][] ratio, int i) => ratio[1][i] != 0.0 || ratio[2][i] != 0.0;

    // Wheel travel at which the spring passes its corners: spring travel is S·(r₀ + S·(r₁/2 + S·r₂/3)).
    private static double[] SpringBreaks(CornerLaws laws, int i)
    {
        var (a, b, c) = (laws.SpringRatio[0][i], laws.SpringRatio[1][i] / 2.0, laws.SpringRatio[2][i] / 3.0);
        return [.. laws.SpringHinges.At.Select(at =>
        {
            var s = at[i] / a;
            for (var turn = 0; turn < 30; turn++)
            {
                s -= ((s * (a + (s * (b + (s * c))))) - at[i]) / (a + (s * ((2.0 * b) + (3.0 * s * c))));
            }

            return s;
        }).Where(double.IsFinite)];
    }

    // Corners of straight stops; a curved stop begins steeply, so panels grow from its clearance.
    private static double[] StopBreaks(CornerLaws laws, int i)
    {
        double[] beyond = [0.0, 1e-5, 1e-4, 1e-3, 5e-3];
        return
        [
            .. laws.BumpHinges.At.Concat(laws.ReboundHinges.At).Select(at => at[i]),
            .. beyond.Select(x => laws.CurvedBump[0][i] + x),
            .. beyond.Select(x => -laws.CurvedRebound[0][i] - x),
        ];
    }
}
