using System.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>How the fitted car moves over the windows: the motion that its numbers hold for.</summary>
internal static class CarMotion
{
    private const double Step = 0.02;

    /// <summary>
    /// Root mean square of the dampers' speed, front and rear together, m/s, and of pitch, rad: over a hump from its onset to a second after the rear
    /// axle has left it, on rough road over the window; in the band of the fit.
    /// </summary>
    public static (double Travel, double Pitch) Of(CarProblem problem, double[] x) => Mean(Each(problem, x));

    /// <summary>The same of some of the windows.</summary>
    /// <param name="squares">Mean squares of windows.</param>
    public static (double Travel, double Pitch) Mean(IReadOnlyCollection<(double Travel, double Pitch)> squares)
    {
        var (travel, pitch) = (0.0, 0.0);
        foreach (var (overTravel, overPitch) in squares)
        {
            travel += overTravel / squares.Count;
            pitch += overPitch / squares.Count;
        }

        return (Math.Sqrt(travel), Math.Sqrt(pitch));
    }

    /// <summary>The mean squares of each window.</summary>
    public static (double Travel, double Pitch)[] Each(CarProblem problem, double[] x)
    {
        var likelihood = problem.Likelihood;
        var result = new (double, double)[problem.Windows.Count];
        for (var w = 0; w < result.Length; w++)
        {
            var spectrum = likelihood.Windows[w];
            var own = likelihood.OwnAt + (CarParameter.Own * w);
            var speed = spectrum.Speed * Math.Exp(x[own + CarParameter.Speed]);
            var (travel, pitch) = Rough(problem, spectrum, x, speed);
            if (spectrum.Hump >= 0)
            {
                var (t, p) = Hump(problem, spectrum, x, speed);
                (travel, pitch) = (travel + t, pitch + p);
            }

            result[w] = (travel, pitch);
        }

        return result;
    }

    private static (Complex Front, Complex Rear, Complex Pitch) Answer(
        HalfCarResponse.HalfCar car, double frequency, double wheelbase, double speed)
    {
        var omega = 2.0 * Math.PI * frequency;
        var late = Complex.FromPolarCoordinates(1.0, -omega * wheelbase / speed);
        var (one, other) = (car.Motion(omega, true), car.Motion(omega, false));
        return (one.Front + (late * other.Front), one.Rear + (late * other.Rear), one.Pitch + (late * other.Pitch));
    }

    private static (double Travel, double Pitch) Rough(CarProblem problem, WindowSpectrum window, double[] x, double speed)
    {
        var car = new HalfCarResponse.HalfCar(x, problem.Known.Wheelbase);
        var (travel, pitch, lines) = (0.0, 0.0, window.Grid.Frequencies);
        var width = lines.Length > 1 ? lines[1] - lines[0] : 1.0;
        foreach (var f in lines)
        {
            var density = Math.Exp(x[CarParameter.Roughness]) * 0.01 * speed / (f * f) * width;
            var (front, rear, turn) = Answer(car, f, problem.Known.Wheelbase, speed);
            travel += density * 0.5 * (Square(front) + Square(rear));
            pitch += density * Square(turn);
        }

        return (travel, pitch);
    }

    private static (double Travel, double Pitch) Hump(CarProblem problem, WindowSpectrum window, double[] x, double speed)
    {
        var splines = problem.Likelihood.Splines[window.Hump];
        var at = problem.Likelihood.HumpAt[window.Hump];
        var car = new HalfCarResponse.HalfCar(x, problem.Known.Wheelbase);
        var (lines, value, slope) = (window.Grid.Frequencies, new Complex[splines.Count], new Complex[splines.Count]);
        var width = lines.Length > 1 ? lines[1] - lines[0] : 1.0;
        var moves = new (Complex Front, Complex Rear, Complex Pitch)[lines.Length];
        for (var k = 0; k < lines.Length; k++)
        {
            splines.Transform(lines[k], speed, value, slope);
            var road = Complex.Zero;
            for (var j = 0; j < splines.Count; j++)
            {
                road += x[at + j] * value[j];
            }

            var (front, rear, pitch) = Answer(car, lines[k], problem.Known.Wheelbase, speed);
            moves[k] = (2.0 * width * road * front, 2.0 * width * road * rear, 2.0 * width * road * pitch);
        }

        var (travel, turned, count) = (0.0, 0.0, (int)((((splines.Length + problem.Known.Wheelbase) / speed) + 1.0) / Step));
        for (var i = 0; i < count; i++)
        {
            var (front, rear, pitch) = (0.0, 0.0, 0.0);
            for (var k = 0; k < lines.Length; k++)
            {
                var turn = Complex.FromPolarCoordinates(1.0, 2.0 * Math.PI * lines[k] * i * Step);
                front += (moves[k].Front * turn).Real;
                rear += (moves[k].Rear * turn).Real;
                pitch += (moves[k].Pitch * turn).Real;
            }

            travel += 0.5 * ((front * front) + (rear * rear)) / count;
            turned += pitch * pitch / count;
        }

        return (travel, turned);
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
