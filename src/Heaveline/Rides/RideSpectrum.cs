using Heaveline.Elements;
using MathNet.Numerics.Integration;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>
/// Root mean square of one body signal over a random road, made for evaluating thousands of designs: frequencies, road, coherence, delay and
/// weighting are worked out once, a design is then a closed-form elimination at each frequency, as many at a time as a register holds. For cars
/// linear about their trim, interconnected or not, alike on both sides or with a driver alone: the first fall apart into heave with pitch and roll,
/// the others are solved whole. The same numbers as <see cref="FrequencyResponse"/> at the same frequencies, to rounding.
/// </summary>
/// <remarks>
/// Frequencies are Gauss points of the whole band in ln f. The delay makes the spectrum swing and the road's band cuts it where it is not small:
/// equal steps of ln f lose ten times as much at the ends (measured 2026-11-25: <c>accuracy</c> of the bench).
/// </remarks>
public sealed class RideSpectrum
{
    private readonly SpectrumTable table;
    private readonly double[] frequencies;
    private readonly double[] widths;
    private readonly bool vertical;
    private readonly double behind;
    private readonly double left;

    private RideSpectrum(
        RideModel like, RoadSpectrum road, double speed, SpectrumOptions? options, Func<double, double> power, (double Behind, double Left)? point)
    {
        ArgumentNullException.ThrowIfNull(like);
        ArgumentNullException.ThrowIfNull(road);
        _ = DrivingSpeed.Checked(speed);
        options ??= SpectrumOptions.Default;
        var car = OneSidedRide.From(like).Mean;
        var (low, high) = (Math.Max(options.Low, speed * road.Band.Low), Math.Min(options.High, speed * road.Band.High));
        if (!(high > low))
        {
            throw new RefusedValueException(
                "band", $"{low:G4} to {high:G4} Hz at this speed", "one in which the road has waves", "Widen the band, or check the road's.");
        }

        (vertical, behind, left) = (point is not null, point?.Behind ?? 0.0, point?.Left ?? 0.0);
        var half = 0.5 * Math.Log(high / low);
        var rule = new GaussLegendreRule(-1.0, 1.0, options.Points);
        frequencies = [.. Enumerable.Range(0, options.Points).Select(k => low * Math.Exp(half * (1.0 + rule.GetAbscissa(k))))];
        widths = [.. frequencies.Select((f, k) => half * rule.GetWeight(k) * f)];
        table = new SpectrumTable(
            road,
            car,
            (like.Car.Front.Tyre.ContactLength.Si, like.Car.Rear.Tyre.ContactLength.Si),
            options.Tracks,
            speed,
            frequencies,
            [.. frequencies.Select((f, k) => widths[k] * power(f))]);
    }

    /// <summary>Frequencies of the sum, Hz.</summary>
    public IReadOnlyList<double> Frequencies => frequencies;

    /// <summary>Width of each frequency in the sum, Hz.</summary>
    public IReadOnlyList<double> Widths => widths;

    /// <summary>What a design is evaluated with.</summary>
    internal SpectrumTable Table => table;

    /// <summary>Vertical acceleration of a rigid point of the body.</summary>
    /// <param name="like">A car with the wheelbase, tracks, places and contact lengths of all designs.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    /// <param name="factor">Weighting factor (–) over frequency in Hz; null for none.</param>
    /// <param name="options">Band and number of frequencies.</param>
    /// <exception cref="RefusedValueException">Speed out of range, an empty band.</exception>
    public static RideSpectrum Vertical(
        RideModel like,
        RoadSpectrum road,
        double speed,
        double behindFrontAxle,
        double leftOfMiddle,
        Func<double, double>? factor = null,
        SpectrumOptions? options = null) =>
        new(like, road, speed, options, f => Squared(Squared(2.0 * Math.PI * f) * (factor?.Invoke(f) ?? 1.0)), (behindFrontAxle, leftOfMiddle));

    /// <summary>Pitch acceleration; parameters as for <see cref="Vertical"/>.</summary>
    public static RideSpectrum Pitch(
        RideModel like, RoadSpectrum road, double speed, Func<double, double>? factor = null, SpectrumOptions? options = null) =>
        new(like, road, speed, options, f => Squared(Squared(2.0 * Math.PI * f) * (factor?.Invoke(f) ?? 1.0)), null);

    /// <summary>Fore-aft specific force h·θ̈ − g·θ at a height h above the pitch axis; parameters as for <see cref="Vertical"/>.</summary>
    public static RideSpectrum ForeAft(
        RideModel like, RoadSpectrum road, double speed, double height, Func<double, double>? factor = null, SpectrumOptions? options = null) =>
        new(like, road, speed, options, f => Squared(((Squared(2.0 * Math.PI * f) * height) + Gravity.Standard) * (factor?.Invoke(f) ?? 1.0)), null);

    /// <summary>Root mean square of the signal, m/s² or rad/s².</summary>
    /// <param name="design">The car; its axles stand where those of the model given at first do.</param>
    public double Rms(in SymmetricRide design)
    {
        var (alpha, beta, kappa) = vertical ? (1.0, behind - design.Front.X, left) : (0.0, 1.0, 0.0);
        return Math.Sqrt(design.IsLinked
            ? LinkedSpectrum.MeanSquare(table, design, alpha, beta, kappa)
            : PlainSpectrum.MeanSquare(table, design, alpha, beta, kappa));
    }

    /// <summary>The same of a car whose sides may differ; of one whose sides do not the same bits as of the mean of both.</summary>
    /// <param name="design">The car; its wheels stand where those of the model given at first do.</param>
    public double Rms(in OneSidedRide design)
    {
        if (!design.IsOneSided)
        {
            return Rms(design.Mean);
        }

        var (alpha, beta, kappa) = vertical ? (1.0, behind - design.Mean.Front.X, left - design.LeftOfMiddle) : (0.0, 1.0, 0.0);
        return Math.Sqrt(design.Mean.IsLinked
            ? OneSidedLinks.MeanSquare(table, design, alpha, beta, kappa)
            : OneSidedSpectrum.MeanSquare(table, design, alpha, beta, kappa));
    }

    private static double Squared(double x) => x * x;
}
