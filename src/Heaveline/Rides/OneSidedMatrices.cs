namespace Heaveline.Rides;

/// <summary>
/// Stiffness, resistance and mass of a car whose sides differ and whose axles may be joined, over half the sum and half the difference of each axle's
/// wheels and then heave, pitch nose-up and roll of the body: lower triangles, one after the other, counted in front tyre rates; then the volumes
/// that the wheels press into the left and the right line.
/// </summary>
internal static unsafe class OneSidedMatrices
{
    /// <summary>Rows and columns.</summary>
    public const int Size = 7;

    /// <summary>Where the body's rows begin.</summary>
    public const int Body = 4;

    /// <summary>Writes them.</summary>
    /// <param name="car">The car.</param>
    /// <param name="to">Room for three matrices and two rows.</param>
    public static void Fill(in OneSidedRide car, double* to)
    {
        var (mean, right, unit) = (car.Mean, -car.LeftOfMiddle, 1.0 / car.Mean.Front.TyreRate);
        double* stiffness = to, resistance = to + (Size * Size), mass = to + (2 * Size * Size);
        new Span<double>(to, (3 * Size * Size) + (2 * Size)).Clear();

        // What each of the four sees of the body.
        ReadOnlySpan<double> sight =
        [
            1.0, mean.Front.X, right, 0.0, 0.0, mean.Front.Y, 1.0, mean.Rear.X, right, 0.0, 0.0, mean.Rear.Y,
        ];
        ReadOnlySpan<double> rates =
        [
            mean.Front.Rate, car.Front.Rate, mean.Link, car.Link, car.Front.Rate, mean.Front.RollRate, car.Link, mean.Link,
            mean.Link, car.Link, mean.Rear.Rate, car.Rear.Rate, car.Link, mean.Link, car.Rear.Rate, mean.Rear.RollRate,
        ];
        ReadOnlySpan<double> dampings =
        [
            mean.Front.Damping, car.Front.Damping, mean.LinkDamping, car.LinkDamping,
            car.Front.Damping, mean.Front.RollDamping, car.LinkDamping, mean.LinkDamping,
            mean.LinkDamping, car.LinkDamping, mean.Rear.Damping, car.Rear.Damping,
            car.LinkDamping, mean.LinkDamping, car.Rear.Damping, mean.Rear.RollDamping,
        ];
        Suspension(rates, sight, unit, stiffness);
        Suspension(dampings, sight, unit, resistance);
        for (var i = 0; i < Body; i++)
        {
            var axle = i < 2 ? mean.Front : mean.Rear;
            stiffness[(Size + 1) * i] += unit * axle.TyreRate;
            resistance[(Size + 1) * i] += unit * axle.TyreDamping;
            mass[(Size + 1) * i] = unit * (i % 2 == 0 ? axle.HopMass : axle.TrampMass);
        }

        mass[(Size + 1) * 4] = unit * mean.Mass;
        mass[(Size + 1) * 5] = unit * mean.PitchInertia;
        mass[(Size + 1) * 6] = unit * mean.RollInertia;
        mass[(Size * 6) + 5] = unit * car.InertiaProduct;
        stiffness[(Size + 1) * 5] -= unit * mean.PitchGravity;
        stiffness[(Size + 1) * 6] -= unit * mean.RollGravity;
        Volume(car.LeftLine, 1.0, sight, to + (3 * Size * Size));
        Volume(car.RightLine, -1.0, sight, to + (3 * Size * Size) + Size);
    }

    // Of the four, and of the body that they stand under: Z, −HᵀZ and HᵀZH.
    private static void Suspension(ReadOnlySpan<double> z, ReadOnlySpan<double> sight, double unit, double* of)
    {
        for (var i = 0; i < Body; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                of[(Size * i) + j] = unit * z[(Body * i) + j];
            }

            for (var k = 0; k < 3; k++)
            {
                var sum = 0.0;
                for (var j = 0; j < Body; j++)
                {
                    sum -= sight[(3 * j) + k] * z[(Body * i) + j];
                }

                of[(Size * (Body + k)) + i] = unit * sum;
            }
        }

        for (var k = 0; k < 3; k++)
        {
            var row = of + (Size * (Body + k));
            for (var m = 0; m <= k; m++)
            {
                for (var i = 0; i < Body; i++)
                {
                    row[Body + m] -= sight[(3 * i) + m] * row[i];
                }
            }
        }
    }

    // A side's wheel is half the sum and, to the left, half the difference; half of a side's line counts, as of all else.
    private static void Volume(
        (double Front, double Rear, double Flow, double FlowRate) line, double side, ReadOnlySpan<double> sight, double* of)
    {
        var half = Math.Sqrt(0.5);
        ReadOnlySpan<double> wheels = [half * line.Front, side * half * line.Front, half * line.Rear, side * half * line.Rear];
        for (var i = 0; i < Body; i++)
        {
            of[i] = wheels[i];
            for (var k = 0; k < 3; k++)
            {
                of[Body + k] -= sight[(3 * i) + k] * wheels[i];
            }
        }
    }
}
