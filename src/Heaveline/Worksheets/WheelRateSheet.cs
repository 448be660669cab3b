using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// Wheel rate in place, friction and clearances from a wheel raised and lowered on a jack that stands on a scale: bushes, leaves and motion ratio are
/// all in it. The rate is the slope of the loop's straight part, the friction half its height, a stop begins where it bends.
/// </summary>
public sealed record WheelRateSheet
{
    /// <summary>Rate at one wheel between the stops, N/m.</summary>
    public required Amount<Stiffness> Rate { get; init; }

    /// <summary>Half the height of the loop at one wheel, N.</summary>
    public required Amount<Force> Friction { get; init; }

    /// <summary>The bump stop; null when the loop does not bend up.</summary>
    public required FoundStop? BumpStop { get; init; }

    /// <summary>The rebound stop; null when the loop does not bend down.</summary>
    public required FoundStop? ReboundStop { get; init; }

    /// <summary>Standard deviation of the readings about the loop, N at one wheel.</summary>
    public required double Scatter { get; init; }

    /// <summary>Largest miss of the loop, N at one wheel.</summary>
    public required double WorstMiss { get; init; }

    /// <summary>The reading that no other agrees with: likely misread; null for none.</summary>
    public required JackReading? Misread { get; init; }

    /// <summary>Whether the readings are good for a car file: none misread, and a rate in doubt by no more than half of itself.</summary>
    public bool IsUsable => Misread is null && Rate.Doubt.HalfWidth <= 0.5 * Rate.Si;

    /// <summary>Whether the friction is in doubt by no more than half of itself.</summary>
    public bool HasFriction => Friction.Doubt.HalfWidth <= 0.5 * Friction.Si;

    /// <summary>What the readings say about themselves, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Works the sheet out.</summary>
    /// <param name="readings">
    /// The stops in any order, at least three gaps going up and three coming down. Their doubts are taken as each reading's own.
    /// </param>
    /// <param name="rest">The gap in the state described; null when not known.</param>
    /// <param name="bothWheels">Whether the jack raised both wheels of an axle together: half of the force goes to each.</param>
    /// <exception cref="RefusedValueException">There are too few readings, or they are of no suspension.</exception>
    public static WheelRateSheet Of(IReadOnlyList<JackReading> readings, Amount<Length>? rest = null, bool bothWheels = false)
    {
        ArgumentNullException.ThrowIfNull(readings);
        foreach (var (lowering, way) in new[] { (false, "going up"), (true, "coming down") })
        {
            var count = readings.Where(r => r.IsLowering == lowering).Select(r => r.Gap.Si).Distinct().Count();
            if (count < 3)
            {
                throw new RefusedValueException(
                    $"the number of different gaps {way}",
                    $"{count}",
                    "three or more",
                    "Stop at six places or more, each going up and coming down: friction is half of what lies between.");
            }
        }

        foreach (var reading in readings)
        {
            Checked.Within(reading.Gap, 0.01, 2.0, "Measure from the wheel's centre up to the edge of the wing.", "Gap");
            Checked.Within(reading.Force, -1e3, 1e5, "Take the jack's own weight off.", "Force");
        }

        var share = bothWheels ? 0.5 : 1.0;
        var origin = rest?.Si ?? readings.Max(r => r.Gap.Si);
        double[] travel = [.. readings.Select(r => origin - r.Gap.Si)];
        double[] side = [.. readings.Select(r => r.IsLowering ? -1.0 : 1.0)];
        double[] force = [.. readings.Select(r => share * r.Force.Si)];
        var slope = Slope(travel, force);
        var readable = Math.Sqrt(readings.Average(r =>
            Math.Pow(share * r.Force.Doubt.HalfWidth, 2) + Math.Pow(slope * r.Gap.Doubt.HalfWidth, 2)));
        var curve = LoopCurve.Of(travel, side, force, 0.5 * readable);
        var fit = curve.Linearised();
        var c = curve.Fit.Coefficients;
        var unknowns = fit.Coefficients.Length;
        double HalfWidth(int k)
        {
            var weights = new double[unknowns];
            weights[k] = 1.0;
            return fit.HalfWidthFrom(0.5 * readable, weights);
        }

        // Bends that leave no sound rate are made by the misread reading itself.
        var isSound = HalfWidth(1) <= 0.5 * c[1];
        double[][] loop = [.. travel.Zip(side, (x, s) => new[] { 1.0, x, s })];
        var squares = isSound ? curve.Fit.SumOfSquares : new LeastSquares(loop, force).SumOfSquares;
        var odd = OddReading.Of(loop, force, 0.5 * readable, squares) is { } at ? readings[at] : null;
        RefuseNonsense(c[1], c[2], HalfWidth(2), odd);
        FoundStop? Stop(double? place, int rate, int unknown, double sign)
        {
            if (place is not { } x)
            {
                return null;
            }

            var doubt = new Doubt(HalfWidth(unknown));
            Amount<Length>? clearance = rest is { } r
                ? new(Math.Max(0.0, sign * x), new Doubt(Math.Sqrt(Math.Pow(doubt.HalfWidth, 2) + Math.Pow(r.Doubt.HalfWidth, 2))))
                : null;
            return new(new(origin - x, doubt), clearance, new(c[rate], new Doubt(HalfWidth(rate))));
        }

        var stops = (curve.Bump is null ? 0 : 1) + (curve.Rebound is null ? 0 : 1);
        var sheet = new WheelRateSheet
        {
            Rate = new(c[1], new Doubt(HalfWidth(1))),
            Friction = new(Math.Max(0.0, c[2]), new Doubt(HalfWidth(2))),
            BumpStop = Stop(curve.Bump, 3, 3 + stops, 1.0),
            ReboundStop = Stop(curve.Rebound, 2 + stops, 2 + stops + stops, -1.0),
            Scatter = curve.Freedom > 0 ? Math.Sqrt(curve.Fit.SumOfSquares / curve.Freedom) : 0.0,
            WorstMiss = travel.Select((x, i) => Math.Abs(force[i] - curve.Force(x, side[i]))).Max(),
            Misread = odd,
            Notes = [],
        };
        return sheet with
        {
            Notes =
            [
                .. WheelRateNotes.RestOutside(rest, readings),
                .. WheelRateNotes.Of(sheet, curve, travel, rest is not null, bothWheels),
            ],
        };
    }

    private static void RefuseNonsense(double rate, double friction, double doubt, JackReading? odd)
    {
        if (!(rate > 0.0))
        {
            throw new RefusedValueException(
                "wheel rate",
                $"{Numeral.Of(In.NewtonsPerMillimetre.Of(rate), 1)} N/mm",
                "above 0 N/mm",
                odd is not null
                    ? $"{WheelRateNotes.MisreadWords(odd)} Read it again."
                    : "The force must grow as the gap shrinks: measure from the wheel's centre up to the wing.");
        }

        if (friction < -doubt)
        {
            throw new RefusedValueException(
                "half the loop",
                $"{Numeral.Of(friction, 0)} N",
                "0 N or above",
                odd is not null
                    ? $"{WheelRateNotes.MisreadWords(odd)} Read it again."
                    : "Going up, the scale shows more than coming down: check which readings are which.");
        }
    }

    // Of a straight line through everything: enough to say what a gap's doubt is worth in force.
    private static double Slope(double[] x, double[] y)
    {
        var (mx, my) = (x.Average(), y.Average());
        return x.Zip(y, (a, b) => (a - mx) * (b - my)).Sum() / x.Sum(a => (a - mx) * (a - mx));
    }
}
