using Heaveline.Cars;

namespace Heaveline.Models;

/// <summary>
/// One car's numbers, still plain doubles, ready to be packed side by side for the kernel. Corner arrays: front
/// left, front right, rear left, rear right.
/// </summary>
internal sealed class RideNumbers
{
    public required SprungBody Body { get; init; }

    public required CornerLaws Laws { get; init; }

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

    public double[] TrimTravel { get; init; } = new double[4];

    public double[] TrimForce { get; init; } = new double[4];

    public required double[] TrimLoad { get; init; }

    public double[] TrimFlow { get; init; } = new double[4];

    /// <summary>Numbers with the reference state's tyre loads and nothing taken off the suspension forces: what the trim is solved on.</summary>
    public static RideNumbers Static(Car car, SprungBody body, CornerLaws laws)
    {
        var rolls = car.Kind == VehicleKind.Car;
        var half = rolls ? 1.0 : 0.5;
        var front = body.BehindFrontAxle;
        var rear = front - car.Wheelbase.Si;
        double[] own = new double[4];
        double[] across = new double[4];
        for (var i = 0; i < 4; i++)
        {
            var axle = car.Axles[i / 2];
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
            Laws = laws,
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
        Laws = Laws,
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

    private static double Arm(SprungBody body, double? axis) => axis is { } height ? body.Mass * Gravity.Standard * (body.Height - height) : 0.0;

    private static double[] PerCorner(double front, double rear) => [front, front, rear, rear];
}
