using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Ties;

/// <summary>
/// What a car would show on its ties, as a function of one coordinate for each scale, each independent doubt of the car file and each pass's speed,
/// all standard normal before the readings. The passes of many points run side by side.
/// </summary>
internal sealed class TieModel
{
    private readonly CarDoubts doubts;
    private readonly Road road;
    private readonly IReadOnlyList<TiePlace> places;
    private readonly IReadOnlyList<int> wheels;
    private readonly IReadOnlyList<Measure<Pass>> measures;
    private readonly int degree;
    private readonly CancellationToken stop;

    public TieModel(Car car, LoadState load, Road road, TieReadings readings, int degree, CancellationToken stop)
    {
        Scales = TieScale.Of(car, readings);
        Readings = readings;
        (this.road, this.degree, this.stop) = (road, degree, stop);
        Stated = RideModel.Of(car, load);
        doubts = CarDoubts.Of(Scales.Aggregate(car, (bare, scale) => scale.Bare(bare)), load);
        places = [.. readings.Passes.SelectMany(p => p.Readings.Select(r => r.Place)).Distinct().Order()];
        wheels = [.. places.SelectMany(place => TiePlaces.Wheels(place, Stated.Rolls).Corners).Distinct().Order()];
        measures = [.. wheels.Select(i => WheelCatalogue.Of(WheelPlace.Of(i, Stated.Rolls))[0])];
        Spreads = [.. Spread()];
    }

    /// <summary>What is sought.</summary>
    public IReadOnlyList<TieScale> Scales { get; }

    /// <summary>The readings.</summary>
    public TieReadings Readings { get; }

    /// <summary>The car as its file states it.</summary>
    public RideModel Stated { get; }

    /// <summary>How many coordinates: scales, then doubts of the file, then speeds.</summary>
    public int Coordinates => Scales.Count + doubts.Sources.Count + Readings.Passes.Length;

    /// <summary>One standard deviation of every number read, m or Hz: passes with their ties in order, then swings, then heights.</summary>
    public IReadOnlyList<double> Spreads { get; }

    /// <summary>The wheels' travels of one pass at the fitted point and their contact with the bump stops, shape (wheels).</summary>
    /// <param name="point">The coordinates.</param>
    public RideModel? CarAt(double[] point)
    {
        try
        {
            var (car, load) = doubts.At(point.AsSpan(Scales.Count, doubts.Sources.Count).ToArray());
            for (var i = 0; i < Scales.Count; i++)
            {
                car = Scales[i].At(car, Scales[i].Spread * point[i]);
            }

            return RideModel.Of(car, load);
        }
        catch (RefusedValueException)
        {
            // Such a car cannot stand: the point is none.
            return null;
        }
    }

    /// <summary>What would be read at each point, shape (points)(numbers); NaN where a pass leaves the model's range.</summary>
    public double[][] At(IReadOnlyList<double[]> points)
    {
        RideModel?[] cars = [.. points.Select(CarAt)];
        var travels = Travels(cars, [.. points.Select(p => (IReadOnlyList<double>)[.. Readings.Passes.Select((pass, k) => SpeedOf(pass, p, k))])]);
        return [.. cars.Select((car, n) => car is null ? NoNumbers() : Numbers(car, travels[n]))];
    }

    /// <summary>Travels at the rods of one pass more at every place read, at each point and speed, shape (points)(speeds)(places).</summary>
    public double[][][] More(IReadOnlyList<double[]> points, IReadOnlyList<double> speeds)
    {
        RideModel?[] cars = [.. points.Select(CarAt)];
        var travels = Travels(cars, [.. points.Select(_ => speeds)]);
        return [.. cars.Select((car, n) => travels[n].Select(row =>
            places.Select(place => car is null ? double.NaN : Rod(car, place, row)).ToArray()).ToArray())];
    }

    /// <summary>One standard deviation of a tie of the usual doubt at each place read, m.</summary>
    public IReadOnlyList<double> UsualSpreads =>
        [.. places.Select(place => Math.Sqrt(Math.Pow(0.5 * TieReading.UsualDoubt, 2) + Math.Pow(Standing(place), 2)))];

    /// <summary>Farthest bump travel of the wheels read at an end in any pass, beyond the bump stop's contact, m: above 0 where pressed.</summary>
    public double PastStop(double[] point, AxleEnd end)
    {
        if (CarAt(point) is not { } car)
        {
            return double.NaN;
        }

        var travels = Travels([car], [[.. Readings.Passes.Select((pass, k) => SpeedOf(pass, point, k))]])[0];
        return wheels.Select((i, k) => (i, k)).Where(w => w.i / 2 == (int)end)
            .Max(w => travels.Max(row => row[w.k]) - car.BumpTouch[w.i]);
    }

    private double SpeedOf(TiePass pass, double[] point, int k) =>
        Math.Clamp(
            pass.Speed.Si * Math.Exp(pass.Spread * point[Scales.Count + doubts.Sources.Count + k]), DrivingSpeed.Slowest, DrivingSpeed.Fastest);

    // Most bump travel of each wheel, m, shape (cars)(speeds)(wheels).
    private double[][][] Travels(RideModel?[] cars, IReadOnlyList<IReadOnlyList<double>> speeds)
    {
        var requests = cars.SelectMany((car, n) => speeds[n].Select(v => car is null ? null : new PassRequest(car, road, v))).ToArray();
        var rows = BatchedMeasures.Of(requests, measures, null, degree, stop);
        var at = 0;
        return [.. cars.Select((_, n) => speeds[n].Select(_ => rows[at++]).ToArray())];
    }

    private double[] Numbers(RideModel car, double[][] travels)
    {
        var numbers = new List<double>();
        for (var k = 0; k < Readings.Passes.Length; k++)
        {
            numbers.AddRange(Readings.Passes[k].Readings.Select(r => Rod(car, r.Place, travels[k])));
        }

        numbers.AddRange(Readings.Swings.Select(s => SwingOf(car, s.End)));
        numbers.AddRange(Readings.Heights.Select(h => FallOf(car, h.End)));
        return [.. numbers];
    }

    private double[] NoNumbers()
    {
        var none = new double[Spreads.Count];
        Array.Fill(none, double.NaN);
        return none;
    }

    // From where each wheel of the loaded car stands to its farthest, by the damper's own ratio; of two wheels the farther.
    private double Rod(RideModel car, TiePlace place, double[] bumps)
    {
        var ratio = RatioOf(car, TiePlaces.EndOf(place));
        var corners = TiePlaces.Wheels(place, car.Rolls).Corners;
        return wheels.Select((i, k) => (i, k)).Where(w => corners.Contains(w.i))
            .Max(w => ratio.Travel(bumps[w.k]) - ratio.Travel(car.Trim.Travel[w.i]));
    }

    // A damper by its damping ratio acts at the wheel: the car file does not say how far it moves, so the readings do.
    private MotionRatio RatioOf(RideModel car, AxleEnd end) =>
        (end == AxleEnd.Front ? Readings.FrontRatio : Readings.RearRatio) ?? car.Car.Axles[(int)end].Damper.MotionRatio;

    private static double SwingOf(RideModel car, AxleEnd end)
    {
        var axle = AxleState.Of(car, end);
        var damping = Math.Min(axle.DampingOf(car, 2 * (int)end), 0.95);
        return axle.Frequency(onRigidTyres: false) * Math.Sqrt(1.0 - (damping * damping));
    }

    private static double FallOf(RideModel car, AxleEnd end)
    {
        var empty = RideModel.Of(car.Car);
        int[] wheels = [2 * (int)end, (2 * (int)end) + 1];
        return wheels.Average(i => car.Trim.Travel[i] - empty.Trim.Travel[i]);
    }

    // Friction lets the body stand anywhere within its band: uniform over it.
    private double Standing(TiePlace place)
    {
        var end = (int)TiePlaces.EndOf(place);
        return RatioOf(Stated, (AxleEnd)end).AtReference.Si * Stated.Trim.FrictionBand[end] / Math.Sqrt(3.0);
    }

    private IEnumerable<double> Spread()
    {
        foreach (var reading in Readings.Passes.SelectMany(p => p.Readings))
        {
            yield return Math.Sqrt((reading.Spread * reading.Spread) + Math.Pow(Standing(reading.Place), 2));
        }

        foreach (var swings in Readings.Swings)
        {
            yield return swings.Frequency.Doubt.StandardDeviation;
        }

        foreach (var heights in Readings.Heights)
        {
            // Twice within the band, before and after.
            var band = Stated.Trim.FrictionBand[(int)heights.End];
            yield return Math.Sqrt((heights.Spread * heights.Spread) + (2.0 * band * band / 3.0));
        }
    }
}
