using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Equivalent linearisation [Roberts and Spanos, Random Vibration and Statistical Linearization; E[F′] derived]: the linear car whose
/// every bending element misses the real one least under the motion that this linear car itself makes on the road, and the mean
/// position at which all mean forces balance.
/// </summary>
internal sealed class EquivalentRide
{
    // So many passes are mixed from the ones before; where that leaps about, the search begins anew and each pass goes a share of its way; and where
    // that turns in circles, once more with mixed steps that are short.
    private const int MixedPasses = 60;
    private const int SharedPasses = 200;
    private const int MostPasses = 500;
    private const int Depth = 5;

    // Relative change of a deviation at which it has settled; going by shares is slow, and is let off earlier.
    private const double Tolerance = 1e-9;
    private const double SharedTolerance = 1e-7;

    // Newton's last step on the mean positions: what it leaves is about its square.
    private const double MeanTolerance = 1e-8;

    // A mixed step that leads further than this share away, in logarithms, is cut.
    private const double LongestStep = 1.0;
    private const double ShortStep = 0.1;

    // How often in a search a step is halved because the means do not balance at its end.
    private const int Halvings = 40;

    private readonly LinearRide tangent;
    private readonly List<RandomSight> sights;
    private readonly double[] rows;
    private readonly bool rolls;
    private readonly double[] mean;

    private EquivalentRide(RideModel model)
    {
        tangent = LinearRide.Of(model);
        sights = RandomSight.Of(model.Numbers);
        rows = [.. sights.SelectMany(sight => sight.Row)];
        rolls = model.Rolls;
        Ride = tangent;
        mean = new double[tangent.Count];
    }

    /// <summary>The linear car.</summary>
    public LinearRide Ride { get; private set; }

    /// <summary>Mean positions from trim.</summary>
    public double[] Mean => mean;

    /// <summary>Number of passes.</summary>
    public int Passes { get; private set; }

    /// <summary>Whether it settled.</summary>
    public bool Converged { get; private set; }

    /// <summary>Whether anything bends at all.</summary>
    public bool Bends => sights.Count > 0;

    /// <summary>Largest relative change of a deviation in the last pass.</summary>
    public double LastChange { get; private set; }

    public static EquivalentRide Of(RideModel model, RandomLines road, CancellationToken cancellation)
    {
        var ride = new EquivalentRide(model);
        ride.Solve(road, cancellation);
        return ride;
    }

    /// <summary>The car as its tangent has it.</summary>
    public static EquivalentRide AtTrim(RideModel model) => new(model) { Converged = true };

    /// <summary>Goes on from here with other frequencies.</summary>
    public EquivalentRide Refined(RandomLines road, CancellationToken cancellation)
    {
        Solve(road, cancellation);
        return this;
    }

    private void Solve(RandomLines road, CancellationToken cancellation)
    {
        Converged = !Bends;
        var count = 2 * sights.Count;
        var (share, last, halvings) = (1.0, double.PositiveInfinity, Halvings);
        var (found, next) = (new double[count], new double[count]);
        var mixing = new FixedPointMixing(count, Depth);
        for (var pass = 0; !Converged && pass < MostPasses; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (pass is MixedPasses or MixedPasses + SharedPasses)
            {
                Begin();
                mixing.Forget();
                halvings = Halvings;
            }

            var shared = pass is >= MixedPasses and < MixedPasses + SharedPasses;

            var now = Deviations();
            road.Squares(Ride, rows, found.AsSpan(0, sights.Count), found.AsSpan(sights.Count));
            var change = 0.0;
            for (var i = 0; i < count; i++)
            {
                found[i] = Math.Sqrt(found[i]);
                change = Math.Max(change, Relative(now[i], found[i]));
            }

            var settled = change < (shared ? SharedTolerance : Tolerance);
            if (settled || shared)
            {
                // A step that grows is one that overshoots: friction stiffens as it moves less.
                share = settled ? 1.0 : change > 0.9 * last ? Math.Max(0.2, 0.7 * share) : share;
                last = change;
                for (var i = 0; i < count; i++)
                {
                    next[i] = now[i] + (share * (found[i] - now[i]));
                }
            }
            else
            {
                Mix(mixing, now, found, next, pass < MixedPasses ? LongestStep : ShortStep);
            }

            LastChange = change;
            Passes++;
            if (!double.IsFinite(change) || !Move(now, next, mixing, ref halvings))
            {
                LastChange = double.NaN;
                if (pass >= MixedPasses + SharedPasses)
                {
                    return;
                }

                pass = shared ? MixedPasses + SharedPasses - 1 : MixedPasses - 1;
                continue;
            }

            Converged = settled;
        }
    }

    // From the tangent at trim.
    private void Begin()
    {
        foreach (var sight in sights)
        {
            (sight.Deviation, sight.Speed) = (0.0, 0.0);
        }

        Array.Clear(mean);
        Ride = tangent;
    }

    // Deviations of every sight, then of every rate.
    private double[] Deviations() => [.. sights.Select(sight => sight.Deviation), .. sights.Select(sight => sight.Speed)];

    private static double Relative(double before, double now) => now > 0.0 ? Math.Abs(now - before) / now : double.IsFinite(now) ? 0.0 : double.NaN;

    // In logarithms: deviations stay above nought, and answer to each other in powers.
    private static void Mix(FixedPointMixing mixing, double[] now, double[] found, double[] next, double longest)
    {
        found.CopyTo(next, 0);
        if (Array.TrueForAll(now, deviation => deviation == 0.0))
        {
            return;
        }

        var (from, to) = (Array.ConvertAll(now, Logarithm), Array.ConvertAll(found, Logarithm));
        var y = (double[])from.Clone();
        mixing.Next(y, to);
        for (var i = 0; i < y.Length; i++)
        {
            next[i] = found[i] > 0.0 && now[i] > 0.0 ? now[i] * Math.Exp(Math.Clamp(y[i] - from[i], -longest, longest)) : found[i];
        }

        static double Logarithm(double deviation) => deviation > 0.0 ? Math.Log(deviation) : 0.0;
    }

    // Takes the car to new deviations, or less far where no mean forces balance there.
    private bool Move(double[] now, double[] next, FixedPointMixing mixing, ref int halvings)
    {
        while (true)
        {
            for (var k = 0; k < sights.Count; k++)
            {
                (sights[k].Deviation, sights[k].Speed) = (next[k], next[k + sights.Count]);
            }

            if (Balance())
            {
                Ride = Straightened();
                return true;
            }

            if (halvings-- == 0)
            {
                return false;
            }

            mixing.Forget();
            for (var i = 0; i < next.Length; i++)
            {
                next[i] = 0.5 * (now[i] + next[i]);
            }
        }
    }

    private LinearRide Straightened()
    {
        var (places, speeds) = ((double[])tangent.ByPlace.Clone(), (double[])tangent.BySpeed.Clone());
        foreach (var sight in sights)
        {
            Add(places, -sight.Excess.Rate, sight);
            Add(speeds, -sight.Excess.Damping, sight);
        }

        return tangent.With(places, speeds);
    }

    private static void Add(Span<double> matrix, double weight, RandomSight sight)
    {
        var n = sight.Row.Length;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                matrix[(i * n) + j] += weight * sight.Pull[i] * sight.Row[j];
            }
        }
    }

    // Newton's method on the mean accelerations: A_p·m − M⁻¹·Σ row·(E[F] − F_trim − k_trim·row·m) = 0.
    private bool Balance()
    {
        var n = tangent.Count;
        Span<double> at = stackalloc double[n];
        Span<double> miss = stackalloc double[n];
        Span<double> slope = stackalloc double[n * n];
        mean.CopyTo(at);
        for (var turn = 0; turn < 50; turn++)
        {
            if (!Update(at, turn > 0))
            {
                return false;
            }

            tangent.ByPlace.CopyTo(slope);
            for (var i = 0; i < n; i++)
            {
                miss[i] = 0.0;
                for (var j = 0; j < n; j++)
                {
                    miss[i] -= slope[(i * n) + j] * at[j];
                }
            }

            foreach (var sight in sights)
            {
                Add(slope, -sight.Excess.Rate, sight);
                for (var i = 0; i < n; i++)
                {
                    miss[i] += sight.Pull[i] * sight.Excess.Force;
                }
            }

            if (!rolls)
            {
                // A two-wheeler has no roll equation.
                slope[(2 * n) + 2] = -1.0;
            }

            Elimination.Solve(slope, miss);
            var largest = 0.0;
            for (var i = 0; i < n; i++)
            {
                at[i] += miss[i];
                largest = Math.Max(largest, Math.Abs(miss[i]));
            }

            if (!double.IsFinite(largest))
            {
                return false;
            }

            if (largest < MeanTolerance)
            {
                at.CopyTo(mean);
                return Update(at, true);
            }
        }

        return false;
    }

    private bool Update(ReadOnlySpan<double> at, bool again)
    {
        var sound = true;
        foreach (var sight in sights)
        {
            sound &= sight.Update(at, again);
        }

        return sound;
    }
}
