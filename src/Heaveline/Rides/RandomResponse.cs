using System.Globalization;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>
/// What a car does on a random road in the long run, from the frequency domain: root mean squares and spectra of any signal, with the wheelbase delay
/// and the coherence of the four wheels' tracks. Bending elements are made straight at the response's own level, about the mean position that they
/// take up there (<see cref="RandomOptions.AtOwnLevel"/>).
/// </summary>
/// <remarks>It knows no wheel in the air: see <see cref="Cautions"/>. Motion slower than the spectrum's longest wave is not in it.</remarks>
public sealed class RandomResponse
{
    private const int FewestPanels = 16;

    /// <summary>
    /// RMS tyre load over the static load past which wheels leave the road too often to be left out: three deviations reach lift-off.
    /// </summary>
    public const double LargestLoadVariation = 1.0 / 3.0;

    private readonly RandomLines lines;
    private readonly double[] mean;

    private RandomResponse(RideModel model, RoadSpectrum spectrum, double speed, EquivalentRide ride, RandomLines lines, double error, bool fine)
    {
        (Model, Spectrum, Speed, this.lines, mean, RelativeError) = (model, spectrum, speed, lines, ride.Mean, error);
        Passes = ride.Passes;
        Outcome = !ride.Converged
            ? RandomOutcome.NotConverged
            : !fine ? RandomOutcome.Coarse : ride.Bends && ride.Passes > 0 ? RandomOutcome.Converged : RandomOutcome.Linear;
        OutcomeSentence = Outcome switch
        {
            RandomOutcome.NotConverged =>
                "No number: on so rough a road no linear car could be found that moves as this one does. Drive it in time instead.",
            RandomOutcome.Coarse => string.Create(
                CultureInfo.InvariantCulture,
                $"The sum over {lines.Frequencies.Count} frequencies still changes by {error:G3}. Something in the car is hardly damped: "
                + $"check its dampers, or allow more error."),
            _ => "",
        };
        Cautions = [.. LoadCautions(), .. Outcome == RandomOutcome.NotConverged ? [] : StickingFriction.Of(this)];
    }

    /// <summary>The car and its load.</summary>
    public RideModel Model { get; }

    /// <summary>The road.</summary>
    public RoadSpectrum Spectrum { get; }

    /// <summary>Speed, m/s.</summary>
    public double Speed { get; }

    /// <summary>How it ended.</summary>
    public RandomOutcome Outcome { get; }

    /// <summary>What went wrong and what to do; empty when nothing did.</summary>
    public string OutcomeSentence { get; }

    /// <summary>Passes of the equivalent linearisation.</summary>
    public int Passes { get; }

    /// <summary>Relative change of the root mean squares at the last halving of panels of frequencies (–).</summary>
    public double RelativeError { get; }

    /// <summary>Where the numbers must be doubted, one sentence each.</summary>
    public IReadOnlyList<RandomCaution> Cautions { get; }

    /// <summary>Frequencies of <see cref="Density"/>, Hz, rising.</summary>
    public IReadOnlyList<double> Frequencies => lines.Frequencies;

    /// <summary>Mean heave from trim, m: dampers stiffer in rebound pull a car down.</summary>
    public double MeanHeave => mean[0];

    /// <summary>The response of a car to a road at a speed.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="spectrum">The road.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="options">How to compute it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">Speed out of range.</exception>
    public static RandomResponse Of(
        RideModel model, RoadSpectrum spectrum, double speed, RandomOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(spectrum);
        options ??= RandomOptions.Default;
        return Of(model, new RideRoad(spectrum, speed, options.Tracks), options, cancellation);
    }

    /// <summary>The same on a road that others have ridden.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="ridden">The road, with the tracks of the options.</param>
    /// <param name="options">How to compute it.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static RandomResponse Of(RideModel model, RideRoad ridden, RandomOptions options, CancellationToken cancellation)
    {
        var asked = Watched(model);
        var road = RandomLines.Of(model, ridden.In(FewestPanels));
        var ride = options.AtOwnLevel ? EquivalentRide.Of(model, road, cancellation) : EquivalentRide.AtTrim(model);
        var squares = Squares(road.Under(ride.Ride), asked);
        var panels = RidePanel.All(2 * FewestPanels);
        var lines = On(ridden.In(panels.Length));
        var error = 0.0;
        var finer = Squares(lines, asked);
        for (var k = 0; k < finer.Length; k++)
        {
            error = Math.Max(error, finer[k] > 0.0 ? 0.5 * Math.Abs(1.0 - (squares[k] / finer[k])) : 0.0);
        }

        // Narrower where a mode is hardly damped, and only there.
        var choice = new PanelChoice(model, ridden, asked, options.Tolerance);
        while (error > options.Tolerance && ride.Converged)
        {
            (error, var wide) = choice.Change(panels, lines, ride.Ride);
            if (error <= options.Tolerance || wide.Length == 0)
            {
                break;
            }

            panels = choice.Narrowed(panels, lines, ride.Ride, wide, cancellation);
            lines = On(ridden.In(panels));
        }

        return new RandomResponse(model, ridden.Spectrum, ridden.Speed, ride, lines, error, error <= options.Tolerance);

        // The linear car goes on from the one before.
        RandomLines On(RideGrid grid)
        {
            cancellation.ThrowIfCancellationRequested();
            road = RandomLines.Of(model, grid);
            if (ride.Converged && options.AtOwnLevel)
            {
                ride = ride.Refined(road, cancellation);
            }

            return road.Under(ride.Ride);
        }
    }

    /// <summary>Root mean square of a signal about its mean, unit of the signal.</summary>
    /// <param name="signal">The signal, of this car.</param>
    /// <param name="factor">A weighting factor (–) over frequency in Hz; null for none.</param>
    public double Rms(RideSignal signal, Func<double, double>? factor = null) => Math.Sqrt(lines.MeanSquare(signal, factor));

    /// <summary>One-sided spectral density of a signal at <see cref="Frequencies"/>, unit of the signal squared per Hz.</summary>
    /// <param name="signal">The signal, of this car.</param>
    public IReadOnlyList<double> Density(RideSignal signal) =>
        [.. Frequencies.Zip(lines.Squares(signal), (f, square) => Spectrum.HeightsAt(f, Speed) * square)];

    /// <summary>Mean suspension travel from trim at corner 0 to 3, m, bump positive.</summary>
    public double MeanTravel(int corner) => mean[3 + corner] - (mean[0] - (Model.X[corner] * mean[1]) + (Model.Y[corner] * mean[2]));

    /// <summary>Root mean square change of a tyre's load over its static load (–), corner 0 to 3.</summary>
    public double LoadVariation(int corner) => Rms(RideSignal.TyreLoad(Model, corner)) / Model.Trim.WheelLoad[corner];

    private IEnumerable<RandomCaution> LoadCautions()
    {
        var past = (from i in Enumerable.Range(0, 4)
                    where Model.Rolls || i % 2 == 0
                    let variation = LoadVariation(i)
                    where !(variation <= LargestLoadVariation)
                    select (Name: CornerNames.Of(i, Model.Rolls), Variation: variation)).ToList();
        if (Outcome != RandomOutcome.NotConverged && past.Count > 0)
        {
            var wheels = string.Join(", ", past.Select(p => FormattableString.Invariant($"{p.Name} {In.Percent.Of(p.Variation):F0} %")));
            yield return new RandomCaution(
                "lift-off",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Tyre loads vary by more than {In.Percent.Of(LargestLoadVariation):F0} % of the static load (root mean square): {wheels}. ")
                + (past.Count == 1 ? "That wheel leaves" : "Those wheels leave") + " the road, which this method does not know. Drive it in time.");
        }
    }

    private static RideSignal[] Watched(RideModel model) =>
    [
        RideSignal.HeaveAcceleration, RideSignal.PitchAcceleration, RideSignal.Pitch, RideSignal.RollAcceleration,
        .. Enumerable.Range(0, 4).SelectMany(i => new[] { RideSignal.Travel(model, i), RideSignal.TyreLoad(model, i) }),
    ];

    private static double[] Squares(RandomLines lines, RideSignal[] signals) => [.. signals.Select(s => lines.MeanSquare(s))];
}
