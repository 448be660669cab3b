using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;

namespace Heaveline.Drives.Planning;

/// <summary>
/// The linear car's answer in time to planks at one speed, from its closed-form transfer functions: ż and k·θ̇ after a step of 1 m under both tracks,
/// from which every row of planks is put together, edge by edge; or, exactly, from a row's own spectrum.
/// </summary>
internal sealed class PlankResponse
{
    // Period of the transform, samples a second, and where the body no longer answers, Hz.
    private const double Period = 16.0;
    private const int Count = 4096;
    private const double Top = 24.0;
    private const double Taper = 18.0;
    private const double Rate = Count / Period;

    private readonly Complex[] heave;
    private readonly Complex[] turn;
    private readonly double[] stepHeave;
    private readonly double[] stepTurn;

    public PlankResponse(RideModel model, double speed)
    {
        (Model, Speed) = (model, speed);
        var gyration = BodyDirection.Gyration(model);
        // The answer to a rest is had from a wave so long that it is one.
        double[] frequencies = [1e-4, .. Enumerable.Range(1, (int)(Top * Period)).Select(k => k / Period)];
        var response = FrequencyResponse.Of(model, speed, frequencies);
        heave = [.. response.Of(RideSignal.Heave).Both.Select((h, k) => h * Fade(frequencies[k]))];
        turn = [.. response.Of(RideSignal.Pitch).Both.Select((h, k) => gyration * h * Fade(frequencies[k]))];
        (stepHeave, stepTurn) = (InTime(heave), InTime(turn));
    }

    public RideModel Model { get; }

    public double Speed { get; }

    /// <summary>Energies in the first second after the rear wheels have left a row of planks, edge by edge.</summary>
    /// <param name="edges">Middle of each edge, m, and the step up, m.</param>
    /// <param name="end">Where the row ends, m.</param>
    public BodyEnergy After(ReadOnlySpan<(double X, double Step)> edges, double end)
    {
        const int Samples = 40;
        var (zz, zt, tt) = (0.0, 0.0, 0.0);
        var leaves = (end + Model.Car.Wheelbase.Si) / Speed;
        for (var n = 0; n < Samples; n++)
        {
            var t = leaves + ((n + 0.5) / Samples);
            var (z, u) = (0.0, 0.0);
            foreach (var (x, step) in edges)
            {
                var at = Math.Max((t - (x / Speed)) * Rate, 0.0);
                var k = (int)at;
                var part = at - k;
                z += step * (stepHeave[k] + (part * (stepHeave[k + 1] - stepHeave[k])));
                u += step * (stepTurn[k] + (part * (stepTurn[k + 1] - stepTurn[k])));
            }

            (zz, zt, tt) = (zz + (z * z), zt + (z * u), tt + (u * u));
        }

        return new(zz / Samples, zt / Samples, tt / Samples);
    }

    /// <summary>ż and k·θ̇ over a row's own spectrum, from the front wheels' first contact on.</summary>
    /// <param name="layout">The row.</param>
    public (double Step, double[] Heave, double[] Turn) Over(PlankLayout layout)
    {
        // Per metre of road over time: r(t) = h(Vt), so its spectrum is H(n)/V at n = f/V; speed is one more factor iω.
        Complex[] road = [.. heave.Select((_, k) => layout.Spectrum(k / (Period * Speed)) / Speed * new Complex(0.0, 2.0 * Math.PI * k / Period))];
        return (1.0 / Rate, InTime([.. road.Zip(heave, (r, h) => r * h)]), InTime([.. road.Zip(turn, (r, h) => r * h)]));
    }

    private static double Fade(double f) => f <= Taper ? 1.0 : 0.5 * (1.0 + Math.Cos(Math.PI * (f - Taper) / (Top - Taper)));

    private static double[] InTime(Complex[] spectrum)
    {
        var whole = new Complex[Count];
        whole[0] = spectrum[0].Real;
        for (var k = 1; k < spectrum.Length; k++)
        {
            (whole[k], whole[Count - k]) = (spectrum[k], Complex.Conjugate(spectrum[k]));
        }

        Fourier.Inverse(whole, FourierOptions.NoScaling);
        return [.. whole.Select(v => v.Real / Period)];
    }
}
