using System.Runtime.Intrinsics;

namespace Heaveline.Films;

/// <summary>
/// Places of the numbers of a half car between its wheels, for each kilogram of sprung mass: what stands between wheel heights that are seen and body
/// heights that are seen. Tyres, unsprung masses and the bump are not in it.
/// </summary>
internal static class FilmedCar
{
    public const int FrontFrequency = 0;
    public const int RearFrequency = 1;
    public const int FrontDamping = 2;
    public const int RearDamping = 3;
    public const int Index = 4;

    /// <summary>By how much of its mean a damper is weaker in bump and stronger in rebound, front.</summary>
    public const int FrontSplit = 5;
    public const int RearSplit = 6;

    /// <summary>Dry friction over the sprung mass on the axle, m/s², front.</summary>
    public const int FrontFriction = 7;
    public const int RearFriction = 8;

    /// <summary>Share of the sprung mass on the front axle.</summary>
    public const int Share = 9;

    /// <summary>How many: the first four are logarithms of Hz and of damping ratios.</summary>
    public const int Count = 10;

    /// <summary>Friction turns round within this velocity, m/s: v/√(v² + a²), as the means over a random road have it.</summary>
    public const double FrictionSpeed = 0.01;

    // The fewest steps a second: a hundredth of the phase of the quickest body in a step.
    private const double StepRate = 400.0;

    /// <summary>What is thought of any car before a film: middle and standard deviation.</summary>
    public static (double Centre, double Spread)[] Known { get; } =
    [
        (Math.Log(1.30), 0.35), (Math.Log(1.35), 0.35), (Math.Log(0.30), 0.6), (Math.Log(0.30), 0.6), (0.98, 0.12),
        (0.3, 0.25), (0.3, 0.25), (0.15, 0.15), (0.15, 0.15), (0.53, 0.05),
    ];

    /// <summary>
    /// Body heights of four cars under the wheel heights of a pass, by the explicit midpoint rule: z̈ = F_f + F_r, and about the centre
    /// k²·α = a·F_f − b·F_r.
    /// </summary>
    /// <param name="cars">Numbers of the cars, shape (<see cref="Count"/>), a car a lane.</param>
    /// <param name="drive">The wheel heights.</param>
    /// <param name="front">Takes heights over the front axle, shape (n).</param>
    /// <param name="rear">Takes heights over the rear axle.</param>
    public static void Run(Vector256<double>[] cars, WheelDrive drive, Span<Vector256<double>> front, Span<Vector256<double>> rear)
    {
        var one = Vector256<double>.One;
        var share = cars[Share];
        var (a, b) = ((one - share) * drive.Wheelbase, share * drive.Wheelbase);
        var square = cars[Index] * a * b;
        var (ff, fr, rr) = (one + (a * a / square), one - (a * b / square), one + (b * b / square));
        var (wf, wr) = (Exp(cars[FrontFrequency]) * (2.0 * Math.PI), Exp(cars[RearFrequency]) * (2.0 * Math.PI));
        var (kf, kr) = (share * wf * wf, (one - share) * wr * wr);
        var (cf, cr) = (share * wf * Exp(cars[FrontDamping]) * 2.0, (one - share) * wr * Exp(cars[RearDamping]) * 2.0);
        var (bumpF, reboundF, bumpR, reboundR) = (
            cf * (one - cars[FrontSplit]), cf * (one + cars[FrontSplit]), cr * (one - cars[RearSplit]), cr * (one + cars[RearSplit]));
        var (muF, muR) = (share * cars[FrontFriction], (one - share) * cars[RearFriction]);
        var small = Vector256.Create(FrictionSpeed * FrictionSpeed);
        var (zf, zr, vf, vr) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
        var steps = StepsFor(drive.Step);
        var h = drive.Step / steps;
        for (var i = 0; i < drive.Count; i++)
        {
            (front[i], rear[i]) = (zf, zr);
            if (i == drive.Count - 1)
            {
                break;
            }

            for (var s = 0; s < steps; s++)
            {
                var (uf, duf, ur, dur) = drive.At(i, s / (double)steps);
                var (af, ar) = Push(zf, zr, vf, vr, uf, duf, ur, dur);
                var (muf, mduf, mur, mdur) = drive.At(i, (s + 0.5) / steps);
                var half = 0.5 * h;
                var (hf, hr) = (vf + (af * half), vr + (ar * half));
                var (mf, mr) = Push(zf + (vf * half), zr + (vr * half), hf, hr, muf, mduf, mur, mdur);
                (zf, zr) = (zf + (hf * h), zr + (hr * h));
                (vf, vr) = (vf + (mf * h), vr + (mr * h));
            }
        }

        (Vector256<double> Front, Vector256<double> Rear) Push(
            Vector256<double> zf, Vector256<double> zr, Vector256<double> vf, Vector256<double> vr, double uf, double duf, double ur, double dur)
        {
            var (rateF, rateR) = (Vector256.Create(duf) - vf, Vector256.Create(dur) - vr);
            var pushF = (kf * (Vector256.Create(uf) - zf)) + (Sided(rateF, bumpF, reboundF) * rateF) + (muF * Sign(rateF));
            var pushR = (kr * (Vector256.Create(ur) - zr)) + (Sided(rateR, bumpR, reboundR) * rateR) + (muR * Sign(rateR));
            return ((pushF * ff) + (pushR * fr), (pushF * fr) + (pushR * rr));
        }

        Vector256<double> Sign(Vector256<double> rate) => rate / Vector256.Sqrt((rate * rate) + small);

        static Vector256<double> Sided(Vector256<double> rate, Vector256<double> bump, Vector256<double> rebound) =>
            Vector256.ConditionalSelect(Vector256.GreaterThan(rate, Vector256<double>.Zero), bump, rebound);
    }

    /// <summary>Steps from one frame to the next.</summary>
    public static int StepsFor(double step) => Math.Max(1, (int)Math.Ceiling(step * StepRate));

    private static Vector256<double> Exp(Vector256<double> x) => Vector256.Create(Math.Exp(x[0]), Math.Exp(x[1]), Math.Exp(x[2]), Math.Exp(x[3]));
}
