using System.Collections.Concurrent;
using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// The likelihood of all windows together, with what was known before: shared parameters first, then the
/// splines of each hump, then each window's own.
/// </summary>
internal sealed class CarLikelihood
{
    private readonly double wheelbase;
    private readonly WindowTerm[] terms;
    private readonly SpectralGrid[] grids;
    private readonly int[] gridOf;
    private readonly ConcurrentBag<WindowScratch> rooms = [];

    /// <summary>The likelihood of windows.</summary>
    /// <param name="windows">The windows over frequency.</param>
    /// <param name="splines">The humps.</param>
    /// <param name="known">What is known before.</param>
    /// <param name="doubts">Each window's doubts: of ln speed, and of its onset, s.</param>
    public CarLikelihood(
        IReadOnlyList<WindowSpectrum> windows, IReadOnlyList<HumpSplines> splines, IdentificationKnown known,
        IReadOnlyList<(double Speed, double Onset)> doubts)
    {
        (Windows, Splines, Known, wheelbase) = (windows, splines, known, known.Wheelbase);
        grids = [.. windows.Select(w => w.Grid).Distinct()];
        gridOf = [.. windows.Select(w => Array.IndexOf(grids, w.Grid))];
        terms = [.. windows.Select(w => new WindowTerm(w, w.Hump < 0 ? null : splines[w.Hump]))];
        HumpAt = new int[splines.Count];
        var next = CarParameter.Shared;
        for (var h = 0; h < splines.Count; h++)
        {
            HumpAt[h] = next;
            next += splines[h].Count;
        }

        OwnAt = next;
        Count = next + (CarParameter.Own * windows.Count);
        (Centre, Precision) = (new double[Count], new double[Count]);
        Before(doubts);
    }

    /// <summary>The windows.</summary>
    public IReadOnlyList<WindowSpectrum> Windows { get; }

    /// <summary>The humps.</summary>
    public IReadOnlyList<HumpSplines> Splines { get; }

    /// <summary>What is known before.</summary>
    public IdentificationKnown Known { get; }

    /// <summary>How many parameters.</summary>
    public int Count { get; }

    /// <summary>Where each hump's splines begin.</summary>
    public int[] HumpAt { get; }

    /// <summary>Where the windows' own parameters begin, three for each.</summary>
    public int OwnAt { get; }

    /// <summary>What is thought of each parameter before.</summary>
    public double[] Centre { get; }

    /// <summary>One over the variance of that.</summary>
    public double[] Precision { get; }

    /// <summary>The terms as they were last worked out.</summary>
    public IReadOnlyList<WindowTerm> Terms => terms;

    /// <summary>−ln of the posterior density but for a constant.</summary>
    /// <param name="parameters">All parameters.</param>
    /// <param name="limit">Frequencies above it are left out, Hz.</param>
    /// <param name="stop">Stops it.</param>
    public double Value(double[] parameters, double limit, CancellationToken stop)
    {
        Work(parameters, limit, false, stop);
        return Sum(parameters);
    }

    /// <summary>The same with Fisher information of the likelihood; each window's score stands in its term.</summary>
    /// <param name="parameters">All parameters.</param>
    /// <param name="limit">Frequencies above it are left out, Hz.</param>
    /// <param name="information">Receives the information, shape (n, n); overwritten.</param>
    /// <param name="score">Receives the derivative of the log likelihood, shape (n); overwritten.</param>
    /// <param name="stop">Stops it.</param>
    public double Score(double[] parameters, double limit, double[] information, double[] score, CancellationToken stop)
    {
        Work(parameters, limit, true, stop);
        Array.Clear(information);
        Array.Clear(score);
        for (var w = 0; w < terms.Length; w++)
        {
            var (term, size) = (terms[w], terms[w].Parameters);
            for (var i = 0; i < size; i++)
            {
                var row = Place(w, i);
                score[row] += term.Score[i];
                for (var j = 0; j < size; j++)
                {
                    information[(row * Count) + Place(w, j)] += term.Information[(i * size) + j];
                }
            }
        }

        return Sum(parameters);
    }

    /// <summary>Moves every onset to where its window fits best, all else the same; whether any moved.</summary>
    /// <param name="parameters">All parameters; the onsets are overwritten.</param>
    /// <param name="limit">Frequencies above it are left out, Hz.</param>
    /// <param name="stop">Stops it.</param>
    public bool SearchOnsets(double[] parameters, double limit, CancellationToken stop)
    {
        // Two standard deviations of the usual guess, in steps finer than half a wave at the top of the band.
        double[] onsets = [.. Enumerable.Range(-50, 101).Select(k => 0.02 * k)];
        var responses = grids.Select(g => HalfCarResponse.Of(g.Fine, parameters, wheelbase, false)).ToArray();
        var moved = new bool[terms.Length];
        ParallelLoop.Each(terms.Length, -1, NewRoom, (w, room) =>
        {
            if (Windows[w].Hump < 0)
            {
                return;
            }

            var own = OwnAt + (CarParameter.Own * w);
            var (at, values) = (own + CarParameter.Onset, new double[onsets.Length]);
            terms[w].Search(responses[gridOf[w]], parameters, own, HumpAt[Windows[w].Hump], wheelbase, limit, onsets, values, room);
            double Before(double onset) => 0.5 * Precision[at] * (onset - Centre[at]) * (onset - Centre[at]);
            var here = terms[w].Residual.ToArray().Sum(r => r * r) + Before(parameters[at]);
            for (var i = 0; i < onsets.Length; i++)
            {
                values[i] += Before(onsets[i]);
            }

            var best = Array.IndexOf(values, values.Min());
            // Nearer than this the steps of the fit find it themselves.
            if (values[best] < here - 1.0 && Math.Abs(onsets[best] - parameters[at]) > 0.03)
            {
                (parameters[at], moved[w]) = (onsets[best], true);
            }
        }, rooms.Add, stop);
        return moved.Any(m => m);
    }

    /// <summary>Mean power by frequency of the windows that share the first one's frequencies, measured and of the model.</summary>
    public FittedSpectrum[] Spectra(double[] parameters)
    {
        var grid = grids[0];
        var (sums, room) = (new double[5 * grid.Frequencies.Length], NewRoom());
        var response = HalfCarResponse.Of(grid.Fine, parameters, wheelbase, false);
        for (var w = 0; w < terms.Length; w++)
        {
            if (gridOf[w] == 0)
            {
                var hump = Windows[w].Hump < 0 ? 0 : HumpAt[Windows[w].Hump];
                terms[w].AddPower(response, parameters, OwnAt + (CarParameter.Own * w), hump, wheelbase, sums, room);
            }
        }

        rooms.Add(room);
        return [.. Enumerable.Range(0, grid.Frequencies.Length).Where(k => sums[(5 * k) + 4] > 0.0).Select(k => new FittedSpectrum(
            grid.Frequencies[k], sums[5 * k] / sums[(5 * k) + 4], sums[(5 * k) + 1] / sums[(5 * k) + 4], sums[(5 * k) + 2] / sums[(5 * k) + 4],
            sums[(5 * k) + 3] / sums[(5 * k) + 4]))];
    }

    /// <summary>
    /// Brings each hump to the middle of its splines, by whole splines, and its onsets with it: the same road, told from another place.
    /// </summary>
    /// <param name="parameters">All parameters; overwritten.</param>
    public void Centred(double[] parameters)
    {
        for (var h = 0; h < Splines.Count; h++)
        {
            var splines = Splines[h];
            var heights = parameters.AsSpan(HumpAt[h], splines.Count);
            var (sum, moment) = (0.0, 0.0);
            for (var j = 0; j < heights.Length; j++)
            {
                sum += heights[j] * heights[j];
                moment += heights[j] * heights[j] * j;
            }

            var by = (int)Math.Round((moment / sum) - (0.5 * (heights.Length - 1)));
            if (!(sum > 0.0) || by == 0)
            {
                continue;
            }

            var old = heights.ToArray();
            for (var j = 0; j < heights.Length; j++)
            {
                heights[j] = j + by >= 0 && j + by < old.Length ? old[j + by] : 0.0;
            }

            for (var w = 0; w < Windows.Count; w++)
            {
                if (Windows[w].Hump == h)
                {
                    var own = OwnAt + (CarParameter.Own * w);
                    parameters[own + CarParameter.Onset] += by * splines.Spacing
                        / (Windows[w].Speed * Math.Exp(parameters[own + CarParameter.Speed]));
                }
            }
        }
    }

    /// <summary>Where the i-th parameter that touches a window stands among all.</summary>
    public int Place(int window, int i) => i < CarParameter.Shared ? i
        : i < CarParameter.Shared + CarParameter.Own ? OwnAt + (CarParameter.Own * window) + i - CarParameter.Shared
        : HumpAt[Windows[window].Hump] + i - CarParameter.Shared - CarParameter.Own;

    private double Sum(double[] parameters)
    {
        var sum = 0.0;
        foreach (var term in terms)
        {
            sum += term.Value;
        }

        for (var i = 0; i < Count; i++)
        {
            var off = parameters[i] - Centre[i];
            sum += 0.5 * Precision[i] * off * off;
        }

        return sum;
    }

    private WindowScratch NewRoom() => rooms.TryTake(out var room) ? room : new WindowScratch(
        grids.Max(g => g.Frequencies.Length), grids.Max(g => g.Fine.Length), Splines.Count == 0 ? 0 : Splines.Max(s => s.Count));

    private void Work(double[] parameters, double limit, bool derivatives, CancellationToken stop)
    {
        var responses = grids.Select(g => HalfCarResponse.Of(g.Fine, parameters, wheelbase, derivatives)).ToArray();
        ParallelLoop.Each(
            terms.Length, -1,
            NewRoom,
            (w, room) =>
            {
                var hump = Windows[w].Hump < 0 ? 0 : HumpAt[Windows[w].Hump];
                terms[w].Work(
                    responses[gridOf[w]], parameters, OwnAt + (CarParameter.Own * w), hump, wheelbase, limit, derivatives, room);
            },
            rooms.Add,
            stop);
    }

    private void Before(IReadOnlyList<(double Speed, double Onset)> doubts)
    {
        void Set(int at, double centre, double spread) => (Centre[at], Precision[at]) = (centre, 1.0 / (spread * spread));
        void Log(int at, KnownNumber number) => Set(at, Math.Log(number.Centre), number.Spread);
        Log(CarParameter.FrontFrequency, Known.FrontFrequency);
        Log(CarParameter.RearFrequency, Known.RearFrequency);
        Log(CarParameter.FrontDamping, Known.FrontDamping);
        Log(CarParameter.RearDamping, Known.RearDamping);
        Log(CarParameter.PitchIndex, Known.PitchIndex);
        Log(CarParameter.FrontUnsprung, Known.FrontUnsprung);
        Log(CarParameter.RearUnsprung, Known.RearUnsprung);
        Log(CarParameter.FrontHop, Known.FrontHop);
        Log(CarParameter.RearHop, Known.RearHop);
        Set(CarParameter.FrontShare, Known.FrontShare, Known.FrontShareSpread);
        Set(CarParameter.Phone, Known.PhoneBehindFrontAxle, Known.PhoneSpread);
        // Roads, phones and their noise differ by powers of ten.
        Set(CarParameter.Roughness, Math.Log(16e-6), 3.0);
        Set(CarParameter.VerticalNoise, Math.Log(1e-3), 4.0);
        Set(CarParameter.PitchNoise, Math.Log(1e-6), 4.0);
        Set(CarParameter.Gain, 0.0, GainSpread);
        for (var j = CarParameter.Shared; j < OwnAt; j++)
        {
            Set(j, 0.0, 0.1);
        }

        for (var w = 0; w < Windows.Count; w++)
        {
            var own = OwnAt + (CarParameter.Own * w);
            Set(own + CarParameter.Speed, 0.0, doubts[w].Speed);
            Set(own + CarParameter.Onset, 0.0, doubts[w].Onset);
            Set(own + CarParameter.Delay, 0.0, Known.SpeedChangeSpread);
        }
    }

    /// <summary>Standard deviation of ln of the gyro's gain over the accelerometer's.</summary>
    public const double GainSpread = 0.015;
}
