using Heaveline.Cars;
using Heaveline.Elements;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Models;

/// <summary>
/// One car's numbers, still plain doubles, ready to be packed side by side for the kernel. Corner arrays: front
/// left, front right, rear left, rear right.
/// </summary>
internal sealed class RideNumbers
{
    // Never written to.
    private static readonly double[] Nothing = new double[4];

    public required SprungBody Body { get; init; }

    /// <summary>The car's elements.</summary>
    public required ElementList Elements { get; init; }

    public required double[] X { get; init; }

    public required double[] Y { get; init; }

    /// <summary>Acceleration of a wheel end per force on it, 1/kg.</summary>
    public required double[] PerWheel { get; init; }

    /// <summary>Acceleration of a wheel end per force on the other end of a solid axle, 1/kg.</summary>
    public required double[] AcrossAxle { get; init; }

    public required double[] TyreRate { get; init; }

    public required double[] TyreDamping { get; init; }

    public required double PitchGravity { get; init; }

    public required double RollGravity { get; init; }

    public required bool Rolls { get; init; }

    public double[] TrimTravel { get; init; } = Nothing;

    public double[] TrimForce { get; init; } = Nothing;

    public required double[] TrimLoad { get; init; }

    public double[] TrimFlow { get; init; } = Nothing;

    /// <summary>Numbers with the reference state's tyre loads and nothing taken off the suspension forces: what the trim is solved on.</summary>
    public static RideNumbers Static(Car car, SprungBody body, ElementList elements)
    {
        var rolls = car.Kind == VehicleKind.Car;
        var half = rolls ? 1.0 : 0.5;
        var front = body.BehindFrontAxle;
        var rear = front - car.Wheelbase.Si;
        double[] own = new double[4];
        double[] across = new double[4];
        for (var i = 0; i < 4; i++)
        {
            var axle = i < 2 ? car.Front : car.Rear;
            var mass = axle.UnsprungMass.Si;
            own[i] = 2.0 / mass;
            if (axle.Suspension == SuspensionKind.SolidAxle)
            {
                // A force at one wheel end lifts the axle, 1/m, and turns it, (track/2)²/I.
                var turn = 0.25 * axle.Track.Si * axle.Track.Si / axle.RollInertia!.Value.Si;
                own[i] = (1.0 / mass) + turn;
                across[i] = (1.0 / mass) - turn;
            }
        }

        var (fy, ry) = rolls ? (0.5 * car.Front.Track.Si, 0.5 * car.Rear.Track.Si) : (0.0, 0.0);
        var y = rolls ? body.LeftOfMiddle : 0.0;
        return new RideNumbers
        {
            Body = body,
            Elements = elements,
            X = [front, front, rear, rear],
            Y = [fy - y, -fy - y, ry - y, -ry - y],
            PerWheel = own,
            AcrossAxle = across,
            TyreRate = PerCorner(half * car.Front.Tyre.Rate.Si, half * car.Rear.Tyre.Rate.Si),
            TyreDamping = PerCorner(half * car.Front.Tyre.Damping.Si, half * car.Rear.Tyre.Damping.Si),
            PitchGravity = Arm(body, car.Body.PitchAxisHeight?.Si),
            RollGravity = rolls ? Arm(body, car.Body.RollAxisHeight?.Si) : 0.0,
            Rolls = rolls,
            TrimLoad =
            [
                car.Weighing.FrontLeft.Si * Gravity.Standard, car.Weighing.FrontRight.Si * Gravity.Standard,
                car.Weighing.RearLeft.Si * Gravity.Standard, car.Weighing.RearRight.Si * Gravity.Standard,
            ],
        };
    }

    /// <summary>The same numbers about a trim.</summary>
    public RideNumbers About(TrimSolution trim) => new()
    {
        Body = Body,
        Elements = Elements,
        X = X,
        Y = Y,
        PerWheel = PerWheel,
        AcrossAxle = AcrossAxle,
        TyreRate = TyreRate,
        TyreDamping = TyreDamping,
        PitchGravity = PitchGravity,
        RollGravity = RollGravity,
        Rolls = Rolls,
        TrimTravel = trim.Travel,
        TrimForce = trim.Force,
        TrimLoad = trim.Load,
        TrimFlow = trim.Flow,
    };

    /// <summary>The same numbers about the trim of others.</summary>
    public RideNumbers About(RideNumbers other) =>
        About(new TrimSolution(other.TrimTravel, other.TrimForce, other.TrimLoad, other.TrimFlow, [], 0.0, 0.0, 0.0));

    /// <summary>Number of positions: heave, pitch, roll, four wheels, and the flow of the left and the right line where fluid flows.</summary>
    public int Positions => Elements.Line is null ? 7 : 9;

    /// <summary>The elements in the kernel's slots.</summary>
    public KernelSlots Slots => field ??= new(this);

    /// <summary>What an element sees at trim.</summary>
    public double AtTrim(Sight sight) => sight.Of(TrimTravel, TrimFlow.AsSpan(0, 2));

    /// <summary>What an element sees per position z, θ, φ, u of the four wheels, q of both lines.</summary>
    /// <param name="sight">Shares of wheel travels s = u − (z − x·θ + y·φ) and of flows.</param>
    /// <param name="positions">Length of the row: 7, or 9 with flows.</param>
    public double[] Row(Sight sight, int positions)
    {
        var row = new double[positions];
        Row(sight, row);
        return row;
    }

    /// <summary>The same into a row of zeros.</summary>
    public void Row(Sight sight, Span<double> row)
    {
        for (var i = 0; i < 4; i++)
        {
            var share = sight.Wheels[i];
            row[0] -= share;
            row[1] += share * X[i];
            row[2] -= share * Y[i];
            row[3 + i] += share;
        }

        for (var q = 7; q < row.Length; q++)
        {
            row[q] = sight.Flows[q - 7];
        }
    }

    /// <summary>Accelerations of the positions per generalised force, M⁻¹; a line without inertance has none.</summary>
    public Matrix<double> PerForce()
    {
        var per = Matrix<double>.Build.Dense(Positions, Positions);
        per[0, 0] = 1.0 / Body.Mass;
        per[1, 1] = 1.0 / Body.PitchInertia;
        if (Rolls)
        {
            // [I_yy −P; −P I_xx] turned over. A two-wheeler does not roll; its track and with it its roll inertia may be zero.
            var determinant = (Body.PitchInertia * Body.RollInertia) - (Body.InertiaProduct * Body.InertiaProduct);
            per[1, 1] = Body.RollInertia / determinant;
            per[2, 2] = Body.PitchInertia / determinant;
            per[1, 2] = per[2, 1] = Body.InertiaProduct / determinant;
        }

        for (var i = 0; i < 4; i++)
        {
            per[3 + i, 3 + i] = PerWheel[i];
            per[3 + i, 3 + (i ^ 1)] = AcrossAxle[i];
        }

        for (var q = 7; q < Positions; q++)
        {
            per[q, q] = Elements.Line!.Resists ? 0.0 : 1.0 / Elements.Line.Inertance;
        }

        return per;
    }

    private static double Arm(SprungBody body, double? axis) => axis is { } height ? body.Mass * Gravity.Standard * (body.Height - height) : 0.0;

    private static double[] PerCorner(double front, double rear) => [front, front, rear, rear];
}
