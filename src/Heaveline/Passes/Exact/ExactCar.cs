using Heaveline.Elements;
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
        Count = n.Positions;
        InverseMass = new double[Count, Count];
        Stiffness = new double[Count, Count];
        Damping = new double[Count, Count];
        TyreRate = n.TyreRate;
        TyreDamping = n.TyreDamping;
        Load = n.TrimLoad;
        FlowScale = n.Elements.Accumulators.SelectMany(unit => unit.Sight.Wheels.ToArray()).Select(Math.Abs).Append(0.0).Max();
        Rates = n.Elements.Line is { Resists: true } ? 7 : Count;
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
        foreach (var element in n.Elements.All)
        {
            car.Add(n, element);
        }

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
            InverseMass[q, q] = n.Elements.Line!.Resists ? 0.0 : 1.0 / n.Elements.Line.Inertance;
        }
    }

    // Row of an element per coordinate, times its motion ratio, which is constant in a car that is straight between its kinks.
    private void Add(RideNumbers n, Element element)
    {
        var ratio = element.Ratio.AtReference;
        double[] row = [.. n.Row(element.Sight, Count).Select(share => ratio * share)];
        var trim = ratio * n.AtTrim(element.Sight);
        var name = $"{CornerNames.Of(element.Corner, n.Rolls)} {element.Name}";
        foreach (var law in element.OnTravel)
        {
            Add(name, row, false, law.ReadBy(new ExactPieceReader(trim)));
        }

        foreach (var law in element.OnRate)
        {
            Add(name, row, true, law.ReadBy(new ExactPieceReader(0.0)));
        }
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
}
