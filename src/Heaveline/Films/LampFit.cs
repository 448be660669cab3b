using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>A dying swing beside a parabola in the logarithm of a lamp's brightness, and whether it may be told.</summary>
internal sealed class LampFit(LampTrack lamp, double? from, CancellationToken stop)
{
    private const double Least = 1.0;
    private const double FewestFlashes = 1.5;
    private const double LeastExplained = 0.5;
    private const double MostSaturated = 0.5;

    // A body with a twentieth of critical damping at 0.8 Hz dies away by 0.25 a second; what does not by half of that is no settling, 1/s.
    private const double LeastDecay = 0.12;

    // Half-width of the rhythm's interval above which nothing is told, of the logarithm.
    private const double MostOpen = 0.2;

    // Where the lamp is seen in fewer of the frames than this its rhythm may be one of the frames that were lost.
    private const double FewestSeen = 0.7;

    public LampFlash Found()
    {
        if (lamp.Saturated > MostSaturated)
        {
            throw new RefusedValueException(
                "frames in which the lamp saturates the picture",
                $"{Numeral.Of(In.Percent.Of(lamp.Saturated), 0)} %",
                $"at most {Numeral.Of(In.Percent.Of(MostSaturated), 0)} %",
                "Film from farther away, exposure locked and dark.");
        }

        if (lamp.Times.Length != lamp.Brightness.Length)
        {
            throw new RefusedValueException(
                "brightness", $"{lamp.Brightness.Length} numbers", $"{lamp.Times.Length}, one a frame", "Give the brightness of each frame.");
        }

        if (from < lamp.Times[0])
        {
            throw new RefusedValueException(
                "the time after which the lamp is looked at",
                $"{Numeral.Of(from.Value, 2)} s",
                $"{Numeral.Of(lamp.Times[0], 2)} s, the first frame, or later",
                "Give the film's time at which the rear wheels have left the bump.");
        }

        // A frame in which the lamp is not seen does not say how dark it was: it tells nothing, and its logarithm would tell much.
        var seen = Enumerable.Range(0, lamp.Times.Length).Where(i => lamp.Brightness[i] > 0.0).ToArray();
        var all = lamp.Brightness.Select(b => b > 0.0 ? Math.Log(b) : double.NaN).ToArray();
        var begins = from ?? Begins(all, seen);
        var kept = seen.Where(i => lamp.Times[i] >= begins).ToArray();
        var looked = lamp.Times.Count(t => t >= begins);
        if (kept.Length < FewestSeen * looked)
        {
            throw new RefusedValueException(
                "frames in which the lamp is seen after the bump",
                $"{kept.Length} of {looked}",
                $"{Numeral.Of(In.Percent.Of(FewestSeen), 0)} % at least",
                "Film from nearer, or with the exposure locked brighter.");
        }

        double[] times = [.. kept.Select(i => lamp.Times[i] - begins)];
        double[] y = [.. kept.Select(i => all[i])];
        if (times.Length < FilmTrack.FewestFrames || times[^1] < Least)
        {
            throw new RefusedValueException(
                "the time that the lamp is seen after the bump",
                times.Length == 0 ? "none" : $"{Numeral.Of(times[^1], 2)} s",
                $"{Numeral.Of(Least, 0)} s at least",
                "Film the car from farther ahead.");
        }

        var best = DyingSwing.Of(times, y, stop);
        var (smooth, swing) = (best.Smooth, best.Swing);
        var left = y.Zip(smooth.Zip(swing, (a, b) => a + b), (v, m) => v - m).ToArray();
        var (whole, rest) = (y.Zip(smooth, (v, s) => (v - s) * (v - s)).Sum(), left.Sum(r => r * r));
        var explained = whole > 0.0 ? 1.0 - (rest / whole) : 0.0;
        if (explained < LeastExplained || best.Frequency * times[^1] < FewestFlashes)
        {
            throw new RefusedValueException(
                "the rhythm of the lamp",
                $"{Numeral.Of(best.Frequency * times[^1], 1)} flashes that explain {Numeral.Of(In.Percent.Of(explained), 0)} % of its changes",
                $"{Numeral.Of(FewestFlashes, 1)} flashes at least and {Numeral.Of(In.Percent.Of(LeastExplained), 0)} %",
                "Film the lamp for longer after the bump, from the road's edge, exposure locked.");
        }

        if (best.Decay < LeastDecay)
        {
            throw new RefusedValueException(
                "what is left of the flash one flash later",
                $"{Numeral.Of(In.Percent.Of(Math.Exp(-best.Decay / best.Frequency)), 0)} %",
                "a swing that dies away",
                "Look whether the lamp shows the settling after a bump: other lights and a rough road flash on and on.");
        }

        if (best.FrequencyOpen > MostOpen)
        {
            throw new RefusedValueException(
                "the rhythm of the lamp",
                $"{Numeral.Of(best.Frequency, 1)} flashes a second, open by ± {Numeral.Of(In.Percent.Of(best.FrequencyOpen), 0)} %",
                $"open by ± {Numeral.Of(In.Percent.Of(MostOpen), 0)} % at most",
                "Film the lamp for longer after the bump, on a smooth road, exposure locked.");
        }

        FilmNumber Number(double value, double open) => new(value, value * Math.Exp(-open), value * Math.Exp(open));
        var one = Number(Math.Exp(-best.Decay / best.Frequency), best.LeftOpen);
        return new LampFlash
        {
            Rhythm = Number(best.Frequency, best.FrequencyOpen),
            LeftAfterOne = one with { High = Math.Min(1.0, one.High) },
            Explained = explained,
            From = begins,
            Length = times[^1],
            Lost = looked - kept.Length,
            Times = [.. kept.Select(i => lamp.Times[i])],
            Seen = [.. y.Zip(smooth, (v, s) => v - s)],
            Fitted = [.. swing],
        };
    }

    // From one frame to the next a lamp changes most while the car is on the bump: what follows is looked at.
    private double Begins(double[] y, int[] seen)
    {
        if (seen.Length < 2)
        {
            return lamp.Times[0];
        }

        var steps = seen.Zip(seen.Skip(1), (a, b) => Math.Abs(y[b] - y[a])).ToArray();
        return lamp.Times[seen[Array.IndexOf(steps, steps.Max()) + 1]];
    }
}
