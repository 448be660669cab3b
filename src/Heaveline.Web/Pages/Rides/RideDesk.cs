using Heaveline.Passes;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Studies;
using Heaveline.Web.Pages.Parts;

namespace Heaveline.Web.Pages.Rides;

/// <summary>Drives cars over random roads for all readers, and keeps the latest figures.</summary>
internal sealed class RideDesk : IDisposable
{
    private const int SpeedCount = 21;

    // Passes in time, and the columns of the tables, stand at every so many of the speeds.
    private const int Apart = 4;

    private const int MostKept = 24;

    private readonly Kept<SweepView> sweeps = new(MostKept);
    private readonly Kept<SpectraView> spectra = new(MostKept);
    private readonly Turn turn = new();

    /// <summary>The sweep, if it is still kept.</summary>
    public SweepView? FindSweep(RideQuestion question, bool inTime) => sweeps.Find(Key(question, inTime));

    /// <summary>The spectra, if they are still kept.</summary>
    public SpectraView? FindSpectra(RideQuestion question) => spectra.Find(question.SpectraKey);

    /// <summary>The sweep over speed.</summary>
    /// <param name="question">A question that can be driven.</param>
    /// <param name="inTime">Whether passes in time are made too.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">A car cannot be driven so.</exception>
    /// <exception cref="RunFailedException">A pass in time left the model's range.</exception>
    public Task<SweepView> Sweep(RideQuestion question, bool inTime, IProgress<double>? progress, CancellationToken cancellation) => turn.Take(
        () =>
        {
            if (FindSweep(question, inTime) is { } known)
            {
                return known;
            }

            double[] speeds = [.. Enumerable.Range(0, SpeedCount).Select(i => question.Speeds.From + ((question.Speeds.To - question.Speeds.From) * i / (SpeedCount - 1)))];
            int[] some = [.. Enumerable.Range(0, SpeedCount).Where(i => i % Apart == 0)];
            // A pass in time costs about as much as so many responses.
            var (all, done, weight) = (question.Cars.Count * (SpeedCount + (inTime ? 12.0 * some.Length : 0.0)), 0.0, 12.0);
            void Step(double cost) => progress?.Report((done += cost) / all);
            var cars = new List<(string Name, IReadOnlyList<RandomResponse> Responses)>();
            var made = new List<IReadOnlyList<RandomPass>>();
            for (var k = 0; k < question.Cars.Count; k++)
            {
                var model = question.Model(k);
                var responses = new List<RandomResponse>();
                foreach (var speed in speeds)
                {
                    responses.Add(RandomResponse.Of(model, question.Road!.Spectrum!, speed, cancellation: cancellation));
                    Step(1.0);
                }

                cars.Add((model.Car.Name, responses));
                made.Add(
                [
                    .. inTime ? some.Select(i =>
                    {
                        var pass = RandomPass.Of(model, question.Road!.Spectrum!, speeds[i], cancellation: cancellation);
                        Step(weight);
                        return pass;
                    }) : [],
                ]);
            }

            var cautions = cars.SelectMany(c => c.Responses.SelectMany(r => RideCautions.Of(r).Select(d => (c.Name, r.Speed, d.Id, Sentence: d.Text))))
                .GroupBy(c => (c.Name, c.Id))
                .Select(g => FormattableString.Invariant($"{g.Key.Name} from {In.KilometresPerHour.Of(g.Min(c => c.Speed)):F0} km/h: {g.MaxBy(c => c.Speed).Sentence}"));
            var view = new SweepView(
                RideSweepFigure.Of(cars, inTime ? made : null, question.Seat?.Name),
                question.Seat is { } seat ? PitchCountFigure.Of(cars[0].Responses, seat) : null,
                [.. cars.Select((c, k) => RideTable.Of(c.Name, [.. some.Select(i => c.Responses[i])], inTime ? made[k] : null))],
                [.. cautions],
                inTime);
            sweeps.Keep(Key(question, inTime), view);
            return view;
        },
        cancellation);

    /// <summary>Spectra and transfer of the first car at the chosen speed.</summary>
    /// <exception cref="RefusedValueException">The car cannot be driven so.</exception>
    public SpectraView Spectra(RideQuestion question)
    {
        if (FindSpectra(question) is { } known)
        {
            return known;
        }

        var model = question.Model(0);
        var view = new SpectraView(RideSpectraFigure.Of(RandomResponse.Of(model, question.Road!.Spectrum!, question.At)), TransferFigure.Of(model, question.At));
        spectra.Keep(question.SpectraKey, view);
        return view;
    }

    public void Dispose() => turn.Dispose();

    private static string Key(RideQuestion question, bool inTime) => question.SweepKey + (inTime ? "\u001fin time" : "");
}
