using System.Numerics;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// What vertical acceleration and pitch rate at the phone of an identified car answer to the road under its front axle, over frequency.
/// </summary>
internal sealed class RoadAnswer
{
    private readonly HalfCarResponse response;
    private readonly double[] frequencies;
    private readonly double wheelbase;

    /// <param name="found">The car.</param>
    /// <param name="frequencies">Hz, above 0.</param>
    public RoadAnswer(CarFromDrive found, double[] frequencies)
        : this(found.Mean.AsSpan()[..CarParameter.Shared], found.Known!.Wheelbase, frequencies)
    {
    }

    /// <param name="parameters">The car, <see cref="CarParameter"/>.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="frequencies">Hz, above 0.</param>
    public RoadAnswer(ReadOnlySpan<double> parameters, double wheelbase, double[] frequencies)
    {
        (this.frequencies, this.wheelbase) = (frequencies, wheelbase);
        response = HalfCarResponse.Of(frequencies, parameters, wheelbase, derivatives: false);
    }

    /// <summary>The answers at frequency k and a speed, 1/s² and rad/(m s).</summary>
    public (Complex Vertical, Complex Pitch) At(int k, double speed) => At(response, k, frequencies[k], wheelbase, speed);

    /// <summary>The answers of a car whose response is worked out.</summary>
    /// <param name="response">The car over frequencies.</param>
    /// <param name="k">Which of them.</param>
    /// <param name="frequency">That one, Hz.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="speed">m/s.</param>
    public static (Complex Vertical, Complex Pitch) At(HalfCarResponse response, int k, double frequency, double wheelbase, double speed)
    {
        const int row = HalfCarResponse.Width;
        var at = response.At(k);
        var (sine, cosine) = Math.SinCos(-2.0 * Math.PI * frequency * wheelbase / speed);
        var late = new Complex(cosine, sine);
        return (
            new Complex(at[0], at[row]) + (late * new Complex(at[4 * row], at[5 * row])),
            new Complex(at[2 * row], at[3 * row]) + (late * new Complex(at[6 * row], at[7 * row])));
    }

    /// <summary>A real signal out of its lines: Σ over both sides, n samples.</summary>
    /// <param name="lines">X(0) … X(n/2), those not given 0.</param>
    /// <param name="n">A power of two.</param>
    /// <param name="stop">Stops it.</param>
    public static double[] Signal(ReadOnlySpan<Complex> lines, int n, CancellationToken stop)
    {
        var whole = new Complex[n];
        for (var k = 1; k < lines.Length && k < n / 2; k++)
        {
            (whole[k], whole[n - k]) = (lines[k], Complex.Conjugate(lines[k]));
        }

        PowerOfTwo.Reorder(whole);
        PowerOfTwo.Backward(whole, stop);
        return [.. whole.Select(c => c.Real)];
    }
}
