using System.Numerics;
using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// What one window adds to the likelihood: −ln of the density of its complex normal transform, mean H·hump, covariance of the roughness through the
/// same car (smeared by the window) and of the noises; with it score and Fisher information by the parameters that touch it.
/// </summary>
/// <remarks>
/// Everything is whitened by Cholesky's factor of the 2×2 covariance. Information is then 2·Re(MᴴM) + tr(WW) over the whitened derivatives of mean
/// and covariance; both stand side by side in one real row for each parameter, so that it is one matrix times its transpose.
/// The places of a window's own parameters come first after the shared ones, those of its hump last.
/// </remarks>
internal sealed class WindowTerm
{
    private const int Width = HalfCarResponse.Width;
    private static readonly double Root2 = Math.Sqrt(2.0);

    private readonly WindowSpectrum window;
    private readonly HumpSplines? splines;
    private readonly int n;
    private readonly double[] residual;
    private WindowScratch room = null!;
    private int stride;
    private (double Vertical, double Pitch) noise;

    /// <summary>The term of a window.</summary>
    public WindowTerm(WindowSpectrum window, HumpSplines? splines)
    {
        (this.window, this.splines) = (window, splines);
        n = window.Grid.Frequencies.Length;
        Parameters = CarParameter.Shared + CarParameter.Own + Humps;
        residual = new double[4 * n];
        Information = new double[Parameters * Parameters];
        Score = new double[Parameters];
    }

    /// <summary>How many parameters touch it: the shared ones, its own, those of its hump.</summary>
    public int Parameters { get; }

    /// <summary>How many splines its hump has.</summary>
    public int Humps => splines?.Count ?? 0;

    /// <summary>−ln of the density.</summary>
    public double Value { get; private set; }

    /// <summary>Fisher information, shape (parameters, parameters).</summary>
    public double[] Information { get; }

    /// <summary>Derivative of the log density, shape (parameters).</summary>
    public double[] Score { get; }

    /// <summary>
    /// What is left, whitened: real and imaginary part of the vertical acceleration, then of the pitch rate, shape (4, frequencies).
    /// </summary>
    public ReadOnlySpan<double> Residual => residual;

    /// <summary>Works the term out.</summary>
    /// <param name="response">The car over the fine frequencies of the window.</param>
    /// <param name="parameters">All parameters.</param>
    /// <param name="own">Where the window's own begin.</param>
    /// <param name="hump">Where its hump's begin.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="limit">Frequencies above it are left out for now, Hz.</param>
    /// <param name="derivatives">Whether score and information are wanted.</param>
    /// <param name="scratch">Room to work in.</param>
    public void Work(
        HalfCarResponse response, ReadOnlySpan<double> parameters, int own, int hump, double wheelbase, double limit, bool derivatives,
        WindowScratch scratch)
    {
        (room, stride) = (scratch, derivatives ? Width : 4);
        var speed = window.Speed * Math.Exp(parameters[own + CarParameter.Speed]);
        var between = speed * Math.Exp(parameters[own + CarParameter.Delay]);
        Spread(response, parameters[CarParameter.Roughness], speed, between, wheelbase, derivatives);
        Road(parameters, speed, parameters[own + CarParameter.Onset], hump);
        noise = (
            Math.Exp(parameters[CarParameter.VerticalNoise]) * window.Grid.Scale, Math.Exp(parameters[CarParameter.PitchNoise]) * window.Grid.Scale);
        var used = 0;
        while (used < window.Used && window.Grid.Frequencies[used] <= limit)
        {
            used++;
        }

        Value = 0.0;
        Array.Clear(residual);
        if (derivatives)
        {
            room.Rows.AsSpan(0, Parameters * 8 * n).Clear();
            Array.Clear(room.Likeness);
        }

        for (var k = 0; k < used; k++)
        {
            Line(k, derivatives);
        }

        if (derivatives)
        {
            Sums();
        }
    }

    /// <summary>What the term would be were the onset elsewhere and all else the same.</summary>
    /// <param name="response">The car over the fine frequencies of the window.</param>
    /// <param name="parameters">All parameters.</param>
    /// <param name="own">Where the window's own begin.</param>
    /// <param name="hump">Where its hump's begin.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="limit">Frequencies above it are left out for now, Hz.</param>
    /// <param name="onsets">Where else, s.</param>
    /// <param name="values">Receives the sums of squares.</param>
    /// <param name="scratch">Room to work in.</param>
    public void Search(
        HalfCarResponse response, ReadOnlySpan<double> parameters, int own, int hump, double wheelbase, double limit, ReadOnlySpan<double> onsets,
        Span<double> values, WindowScratch scratch)
    {
        Work(response, parameters, own, hump, wheelbase, limit, false, scratch);
        values.Clear();
        for (var k = 0; k < window.Used && window.Grid.Frequencies[k] <= limit; k++)
        {
            var (white, _, data0, data1, mean0, mean1) = Whitened(k);
            for (var i = 0; i < onsets.Length; i++)
            {
                var (sine, cosine) = Math.SinCos(-2.0 * Math.PI * window.Grid.Frequencies[k] * (onsets[i] - parameters[own + CarParameter.Onset]));
                var late = new Complex(cosine, sine);
                var (of0, of1) = white.Of(data0 - (mean0 * late), data1 - (mean1 * late));
                values[i] += Square(of0) + Square(of1);
            }
        }
    }

    /// <summary>
    /// Adds the power at each frequency that was compared: vertical, its model's, pitch rate, its model's, and a one for the count.
    /// </summary>
    /// <param name="response">The car over the fine frequencies of the window.</param>
    /// <param name="parameters">All parameters.</param>
    /// <param name="own">Where the window's own begin.</param>
    /// <param name="hump">Where its hump's begin.</param>
    /// <param name="wheelbase">m.</param>
    /// <param name="to">Shape (frequencies, 5); added to.</param>
    /// <param name="scratch">Room to work in.</param>
    public void AddPower(
        HalfCarResponse response, ReadOnlySpan<double> parameters, int own, int hump, double wheelbase, Span<double> to, WindowScratch scratch)
    {
        Work(response, parameters, own, hump, wheelbase, double.PositiveInfinity, false, scratch);
        for (var k = 0; k < window.Used; k++)
        {
            var (_, _, data0, data1, mean0, mean1) = Whitened(k);
            var row = to.Slice(5 * k, 5);
            row[0] += Square(data0) / window.Grid.Scale;
            row[1] += (Square(mean0) + (0.5 * room.Smeared[k * 4 * stride]) + noise.Vertical) / window.Grid.Scale;
            row[2] += Square(data1) / window.Grid.Scale;
            row[3] += (Square(mean1) + (0.5 * room.Smeared[(k * 4 * stride) + stride]) + noise.Pitch) / window.Grid.Scale;
            row[4] += 1.0;
        }
    }

    // The car's answers at this speed, and the products that make the covariance: |H₀|², |H₁|², H₁H₀* and their derivatives, twice over.
    private void Spread(HalfCarResponse response, double roughness, double speed, double between, double wheelbase, bool derivatives)
    {
        var grid = window.Grid;
        var density = Math.Exp(roughness) * 0.01 * speed * grid.Scale;
        Span<double> h = stackalloc double[4 * Width];
        var next = 0;
        for (var m = 0; m < grid.Fine.Length; m++)
        {
            var rows = response.At(m);
            var (sine, cosine) = Math.SinCos(-2.0 * Math.PI * grid.Fine[m] * wheelbase / between);
            for (var part = 0; part < 4; part += 2)
            {
                var (ahead, behind) = (part * Width, (part + 4) * Width);
                Turned.Add(
                    rows[ahead..], rows[(ahead + Width)..], rows[behind..], rows[(behind + Width)..], cosine, sine, h[ahead..], h[(ahead + Width)..],
                    stride);
            }

            if (derivatives)
            {
                for (var row = 0; row < 4; row++)
                {
                    h[(row * Width) + HalfCarResponse.Delay] /= between;
                }
            }

            Turned.Products(h, density / (grid.Fine[m] * grid.Fine[m]), room.Fine.AsSpan(m * 4 * stride, 4 * stride), Width, stride);
            if (next < n && grid.Pick[next] == m)
            {
                h.CopyTo(room.Answers.AsSpan(next++ * 4 * Width));
            }
        }

        grid.Smear(room.Fine, 4 * stride, room.Smeared);
    }

    // The hump over time at this speed, and by ln of the speed.
    private void Road(ReadOnlySpan<double> parameters, double speed, double onset, int hump)
    {
        if (splines is null)
        {
            Array.Clear(room.Road);
            Array.Clear(room.RoadBySpeed);
            return;
        }

        var count = splines.Count;
        for (var k = 0; k < n; k++)
        {
            var frequency = window.Grid.Frequencies[k];
            var v = room.Splines.AsSpan(k * count, count);
            var d = room.BySpeed.AsSpan(k * count, count);
            splines.Transform(frequency, speed, v, d);
            var (sine, cosine) = Math.SinCos(-2.0 * Math.PI * frequency * onset);
            var late = new Complex(cosine, sine);
            var (sum, slope) = (Complex.Zero, Complex.Zero);
            for (var j = 0; j < count; j++)
            {
                v[j] *= late;
                sum += parameters[hump + j] * v[j];
                slope += parameters[hump + j] * d[j];
            }

            (room.Road[k], room.RoadBySpeed[k]) = (sum, slope * late);
        }
    }

    // One frequency's whitening, the logarithm of its determinant, and both channels of data and of the hump's answer.
    private (Whitening White, double Logarithm, Complex Data0, Complex Data1, Complex Mean0, Complex Mean1) Whitened(int k)
    {
        var c = room.Smeared.AsSpan(k * 4 * stride, 4 * stride);
        var h = room.Answers.AsSpan(k * 4 * Width, 4 * Width);
        var doubt = window.Doubt;
        var l00 = Math.Sqrt((0.5 * c[0]) + noise.Vertical + doubt[k]);
        var l10 = new Complex(0.5 * c[2 * stride], 0.5 * c[3 * stride]) / l00;
        var l11 = Math.Sqrt(Math.Max((0.5 * c[stride]) + noise.Pitch + doubt[n + k] - Square(l10), 1e-300));
        var (data, road) = (window.Data, room.Road[k]);
        return (
            new Whitening(1.0 / l00, l10 / (l00 * l11), 1.0 / l11),
            2.0 * Math.Log(l00 * l11),
            new Complex(data[k], data[n + k]),
            new Complex(data[(2 * n) + k], data[(3 * n) + k]),
            new Complex(h[0], h[Width]) * road,
            new Complex(h[2 * Width], h[3 * Width]) * road);
    }

    // One frequency: covariance, its factor, what is left, and the whitened derivatives.
    private void Line(int k, bool derivatives)
    {
        var (white, logarithm, data0, data1, mean0, mean1) = Whitened(k);
        var (of0, of1) = white.Of(data0 - mean0, data1 - mean1);
        (residual[k], residual[n + k], residual[(2 * n) + k], residual[(3 * n) + k]) = (of0.Real, of0.Imaginary, of1.Real, of1.Imaginary);
        var (power0, power1) = (Square(of0), Square(of1));
        Value += logarithm + power0 + power1;
        if (!derivatives)
        {
            return;
        }

        var c = room.Smeared.AsSpan(k * 4 * stride, 4 * stride);
        var h = room.Answers.AsSpan(k * 4 * Width, 4 * Width);
        var road = room.Road[k];
        var (r00, r11, r10) = (0.5 * c[0], 0.5 * c[stride], new Complex(0.5 * c[2 * stride], 0.5 * c[3 * stride]));
        var (h0, h1) = (new Complex(h[0], h[Width]), new Complex(h[2 * Width], h[3 * Width]));
        var cross = of1 * Complex.Conjugate(of0);
        (room.Likeness[k], room.Likeness[n + k]) = (power0 - 1.0, power1 - 1.0);
        (room.Likeness[(2 * n) + k], room.Likeness[(3 * n) + k]) = (Root2 * cross.Real, Root2 * cross.Imaginary);
        for (var j = 0; j < CarParameter.Car; j++)
        {
            var at = j + 1;
            Mean(j, k, white, new Complex(h[at], h[Width + at]) * road, new Complex(h[(2 * Width) + at], h[(3 * Width) + at]) * road);
            Covariance(j, k, white, c[at], c[Width + at], new Complex(c[(2 * Width) + at], c[(3 * Width) + at]));
        }

        var s = CarParameter.Shared;
        const int by = HalfCarResponse.Delay;
        var (d0, d1) = (new Complex(h[by], h[Width + by]) * road, new Complex(h[(2 * Width) + by], h[(3 * Width) + by]) * road);
        var (c00, c11, c10) = (c[by], c[Width + by], new Complex(c[(2 * Width) + by], c[(3 * Width) + by]));
        Mean(s + CarParameter.Delay, k, white, d0, d1);
        Covariance(s + CarParameter.Delay, k, white, c00, c11, c10);
        // The roughness met in a second grows with the speed.
        Mean(s + CarParameter.Speed, k, white, d0 + (h0 * room.RoadBySpeed[k]), d1 + (h1 * room.RoadBySpeed[k]));
        Covariance(s + CarParameter.Speed, k, white, c00 + r00, c11 + r11, c10 + r10);
        var late = new Complex(0.0, -2.0 * Math.PI * window.Grid.Frequencies[k]) * road;
        Mean(s + CarParameter.Onset, k, white, h0 * late, h1 * late);
        Covariance(CarParameter.Roughness, k, white, r00, r11, r10);
        Covariance(CarParameter.VerticalNoise, k, white, noise.Vertical, 0.0, default);
        Covariance(CarParameter.PitchNoise, k, white, 0.0, noise.Pitch, default);
        Mean(CarParameter.Gain, k, white, default, h1 * road);
        Covariance(CarParameter.Gain, k, white, 0.0, 2.0 * r11, r10);
        var count = Humps;
        for (var j = 0; j < count; j++)
        {
            var v = room.Splines[(k * count) + j];
            Mean(s + CarParameter.Own + j, k, white, h0 * v, h1 * v);
        }
    }

    private void Mean(int parameter, int k, in Whitening white, Complex d0, Complex d1)
    {
        var (w0, w1) = white.Of(d0, d1);
        var row = room.Rows.AsSpan(parameter * 8 * n, 4 * n);
        (row[k], row[n + k], row[(2 * n) + k], row[(3 * n) + k]) =
            (Root2 * w0.Real, Root2 * w0.Imaginary, Root2 * w1.Real, Root2 * w1.Imaginary);
    }

    private void Covariance(int parameter, int k, in Whitening white, double d00, double d11, Complex d10)
    {
        var (w00, w11, w10) = white.Of(d00, d11, d10);
        var row = room.Rows.AsSpan((parameter * 8 * n) + (4 * n), 4 * n);
        (row[k], row[n + k], row[(2 * n) + k], row[(3 * n) + k]) = (w00, w11, Root2 * w10.Real, Root2 * w10.Imaginary);
    }

    private void Sums()
    {
        var size = Parameters;
        for (var i = 0; i < size; i++)
        {
            var row = room.Rows.AsSpan(i * 8 * n, 8 * n);
            Score[i] = (Root2 * Dot.Of(row[..(4 * n)], residual)) + Dot.Of(row[(4 * n)..], room.Likeness.AsSpan(0, 4 * n));
            // A hump moves the mean alone.
            var length = i < CarParameter.Shared + CarParameter.Own ? 8 * n : 4 * n;
            for (var j = 0; j <= i; j++)
            {
                var sum = Dot.Of(row[..length], room.Rows.AsSpan(j * 8 * n, length));
                (Information[(i * size) + j], Information[(j * size) + i]) = (sum, sum);
            }
        }
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
