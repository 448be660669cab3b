using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Passes.Exact;

/// <summary>
/// The equations of motion written by virtual work over the coordinates q = (z, θ, φ, u of the four wheels, fluid gone from front to rear
/// left and right): M·q̈ = −K·q − D·q̇ − Σ row·F(signal) + tyres. Signs by ISO 8855; the travel of a wheel is s = u − (z − x·θ + y·φ),
/// that of an element along a solid axle the mean of both wheels' travels by its share. Everything is a change from trim. A second route
/// beside the kernel's own sums, to check it.
/// </summary>
internal sealed class ExactCar
{
    private ExactCar(RideNumbers n)
    {
        Count = (n.Laws.Needs & Needs.FluidLink) != 0 && n.Laws.FluidFlows ? 9 : 7;
        InverseMass = new double[Count, Count];
        Stiffness = new double[Count, Count];
        Damping = new double[Count, Count];
        TyreRate = n.TyreRate;
        TyreDamping = n.TyreDamping;
        Load = n.TrimLoad;
        FlowScale = n.Laws.FluidArea.Max(Math.Abs);
        Rates = n.Laws.FluidResists ? 7 : Count;
    }

    /// <summary>Number of coordinates, 7, or 9 with a fluid line.</summary>
    public int Count { get; }

    /// <summary>
    /// Number of coordinates with inertia, the first ones: all, or 7 beside a fluid line that only resists. There D·q̇ = −K·q stands for the others.
    /// </summary>
    public int Rates { get; }

    /// <summary>M⁻¹, shape (count, count).</summary>
    public double[,] InverseMass { get; }

    /// <summary>K of everything without a kink: plain springs, bars, interconnection, and gravity on the tilting body (negative).</summary>
    public double[,] Stiffness { get; }

    /// <summary>D of everything without a kink.</summary>
    public double[,] Damping { get; }

    /// <summary>Springs, dampers and stops with kinks.</summary>
    public List<ExactElement> Elements { get; } = [];

    public double[] TyreRate { get; }

    public double[] TyreDamping { get; }

    /// <summary>Static tyre load N.</summary>
    public double[] Load { get; }

    /// <summary>Volume per wheel travel of the fluid line, m²: how large a flow is that goes with a metre per second.</summary>
    public double FlowScale { get; }

    /// <summary>The equations of one car.</summary>
    public static ExactCar From(RideNumbers n)
    {
        var car = new ExactCar(n);
        car.SetMasses(n);
        var wheel = Enumerable.Range(0, 4).Select(i => car.WheelRow(n, i)).ToArray();
        for (var i = 0; i < 4; i++)
        {
            car.SetCorner(n, i, wheel);
        }

        car.SetJoints(n.Laws, wheel);
        car.Stiffness[1, 1] -= n.PitchGravity;
        car.Stiffness[2, 2] -= n.RollGravity;
        return car;
    }

    /// <summary>Adds weight·row·rowᵀ to a matrix.</summary>
    public static void AddSquare(double[,] matrix, double[] row, double weight)
    {
        for (var i = 0; i < row.Length; i++)
        {
            if (row[i] != 0.0)
            {
                for (var j = 0; j < row.Length; j++)
                {
                    matrix[i, j] += weight * row[i] * row[j];
                }
            }
        }
    }

    private void SetMasses(RideNumbers n)
    {
        var body = n.Body;
        InverseMass[0, 0] = 1.0 / body.Mass;
        if (n.Rolls)
        {
            // [I_yy −P; −P I_xx] turned over.
            var determinant = (body.PitchInertia * body.RollInertia) - (body.InertiaProduct * body.InertiaProduct);
            InverseMass[1, 1] = body.RollInertia / determinant;
            InverseMass[2, 2] = body.PitchInertia / determinant;
            InverseMass[1, 2] = InverseMass[2, 1] = body.InertiaProduct / determinant;
        }
        else
        {
            InverseMass[1, 1] = 1.0 / body.PitchInertia;
        }

        for (var i = 0; i < 4; i++)
        {
            InverseMass[3 + i, 3 + i] = n.PerWheel[i];
            InverseMass[3 + i, 3 + (i ^ 1)] = n.AcrossAxle[i];
        }

        for (var q = 7; q < Count; q++)
        {
            InverseMass[q, q] = n.Laws.FluidResists ? 0.0 : 1.0 / n.Laws.FluidInertance;
            Damping[q, q] = n.Laws.FluidResistance;
        }
    }

    private double[] WheelRow(RideNumbers n, int i)
    {
        var row = new double[Count];
        row[0] = -1.0;
        row[1] = n.X[i];
        row[2] = -n.Y[i];
        row[3 + i] = 1.0;
        return row;
    }

    private void SetCorner(RideNumbers n, int i, double[][] wheel)
    {
        var laws = n.Laws;
        var s = n.TrimTravel;
        var corner = CornerNames.Of(i, n.Rolls);

        // Row and travel at trim of an element at its own place, times its motion ratio.
        (double[] Row, double Trim) At(double[] share, double ratio) =>
            (Sum(ratio * share[i], wheel[i], ratio * (1.0 - share[i]), wheel[i ^ 1]), ratio * ((share[i] * s[i]) + ((1.0 - share[i]) * s[i ^ 1])));

        var (spring, springTrim) = At(laws.SpringShare, laws.SpringRatio[0][i]);
        Add($"{corner} spring", spring, false, ExactLaw.From(i, laws.SpringSlope[i], springTrim, laws.SpringHinges));
        var (damper, _) = At(laws.DamperShare, laws.DamperRatio[0][i]);
        Add($"{corner} damper", damper, true, ExactLaw.From(i, laws.DamperSlope[i], 0.0, laws.DamperHinges));
        var (stop, stopTrim) = At(laws.StopShare, 1.0);
        Add($"{corner} stop", stop, false, ExactLaw.From(i, 0.0, stopTrim, laws.BumpHinges, laws.ReboundHinges));
    }

    private void Add(string name, double[] row, bool onRates, ExactLaw law)
    {
        if (law.Borders.Length == 0)
        {
            AddSquare(onRates ? Damping : Stiffness, row, law.Slopes[0]);
        }
        else
        {
            Elements.Add(new ExactElement(name, row, onRates, law));
        }
    }

    private void SetJoints(CornerLaws laws, double[][] wheel)
    {
        for (var left = 0; left < 4; left += 2)
        {
            AddSquare(Stiffness, Sum(1.0, wheel[left], -1.0, wheel[left + 1]), laws.Bar[left]);
        }

        if ((laws.Needs & Needs.ElasticLink) != 0)
        {
            for (var side = 0; side < 2; side++)
            {
                var common = Sum(laws.LinkRatio[side], wheel[side], laws.LinkRatio[side + 2], wheel[side + 2]);
                AddSquare(Stiffness, common, laws.LinkRate);
                AddSquare(Damping, common, laws.LinkDamping);
            }
        }
        else if ((laws.Needs & Needs.FluidLink) != 0)
        {
            // Energy V²/2C of each unit, V = A·s − q in front and A·s + q behind: its slopes are the pressures on wheels and on the line.
            for (var i = 0; i < 4; i++)
            {
                var volume = Sum(laws.FluidArea[i], wheel[i], 0.0, wheel[i]);
                if (Count == 9)
                {
                    volume[7 + (i & 1)] = i < 2 ? -1.0 : 1.0;
                }

                AddSquare(Stiffness, volume, laws.FluidStiffness[i]);
            }
        }
    }

    private static double[] Sum(double a, double[] x, double b, double[] y) => [.. x.Zip(y, (p, q) => (a * p) + (b * q))];
}
