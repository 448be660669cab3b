using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Films;

/// <summary>Films of one car before a change and after it.</summary>
public sealed record FilmChange
{
    /// <summary>
    /// One pass differs from the next by so much of its settling (standard deviation of the logarithm) where the line and the road's roughness are
    /// not the same: planted passes scatter by 6 to 8 %.
    /// </summary>
    public const double OnePass = 0.08;

    // What is taken of a pass counts as so many pairs: two or three that chance to part little, or much, do not outweigh it.
    private const double Planted = 8.0;

    /// <summary>A film after is held against one before whose speed lies no farther off, of its logarithm.</summary>
    public const double SpeedsApart = 0.10;

    /// <summary>RMS pitch of the settling over the lift, after over before, mean over the pairs of films that were driven alike.</summary>
    public required FilmNumber Settling { get; init; }

    /// <summary>
    /// Numbers of the car, after over before, the index after less before; those that are said on both sides. None where a film of one side was
    /// driven at a speed that no film of the other has: frequencies and dampings of a car change with its motion.
    /// </summary>
    public required ImmutableArray<(CarNumber Number, FilmNumber Change)> OfCar { get; init; }

    /// <summary>Films of before and after that were driven alike, as places in both: each in one pair at most, the nearest speeds first.</summary>
    public required ImmutableArray<(int Before, int After)> Pairs { get; init; }

    /// <summary>RMS pitch for the lift before, mean over the pairs, rad/m; not a number without any.</summary>
    public required double Before { get; init; }

    /// <summary>The same after.</summary>
    public required double After { get; init; }

    /// <summary>Whether any film after was driven as one before.</summary>
    public bool IsAlike => !Pairs.IsEmpty;

    /// <summary>Compares.</summary>
    /// <param name="before">The car before.</param>
    /// <param name="after">The car after.</param>
    public static FilmChange Of(SeenCar before, SeenCar after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var pairs = Paired(before, after);
        double Mean(SeenCar car, IEnumerable<int> films) =>
            pairs.IsEmpty ? double.NaN : Math.Exp(films.Average(f => Math.Log(car.Numbers[f].PitchPerLift.Value)));
        return new FilmChange
        {
            Pairs = pairs,
            Before = Mean(before, pairs.Select(p => p.Before)),
            After = Mean(after, pairs.Select(p => p.After)),
            Settling = Whole(before, after, pairs),
            OfCar =
            [
                .. before.Car.Estimates.Where(e => AreSpeedsAlike(before, after) && e.IsSaid && after.Car.Of(e.Number) is { IsSaid: true })
                    .Select(e => (e.Number, Change(e, after.Car.Of(e.Number)!))),
            ],
        };
    }

    /// <summary>Whether each film of either side has one of the other whose speed is near.</summary>
    internal static bool AreSpeedsAlike(SeenCar before, SeenCar after)
    {
        static bool Has(SeenCar car, SeenPass film) => car.Passes.Any(p => Math.Abs(Math.Log(p.Speed / film.Speed)) <= SpeedsApart);
        return before.Passes.All(b => Has(after, b)) && after.Passes.All(a => Has(before, a));
    }

    // Of films that show the settling's first second whole.
    private static ImmutableArray<(int Before, int After)> Paired(SeenCar before, SeenCar after)
    {
        static int[] Whole(SeenCar car) => [.. Enumerable.Range(0, car.Passes.Length)
            .Where(f => car.Numbers[f].IsSecondSeen && double.IsFinite(car.Numbers[f].PitchPerLift.Value))];
        double Apart(int b, int a) => Math.Abs(Math.Log(after.Passes[a].Speed / before.Passes[b].Speed));
        var pairs = new List<(int Before, int After)>();
        foreach (var (b, a) in Whole(before).SelectMany(b => Whole(after).Select(a => (b, a))).Where(p => Apart(p.b, p.a) <= SpeedsApart)
            .OrderBy(p => Apart(p.b, p.a)))
        {
            if (pairs.TrueForAll(p => p.Before != b && p.After != a))
            {
                pairs.Add((b, a));
            }
        }

        return [.. pairs.OrderBy(p => before.Passes[p.Before].Speed)];
    }

    // Mean of the pairs' logarithms, its half-width by the films' own doubt and by how passes scatter, and by how the pairs part where that is more.
    // A wheelbase that both sheets give is one error in both and cancels.
    private static FilmNumber Whole(SeenCar before, SeenCar after, ImmutableArray<(int Before, int After)> pairs)
    {
        if (pairs.IsEmpty)
        {
            return new FilmNumber(double.NaN, double.NaN, double.NaN);
        }

        var ruler = before.Passes.Concat(after.Passes).Select(p => p.Wheelbase).Distinct().Count() == 1
            ? 0.0 : Math.Sqrt(Square(before.Passes[0].WheelbaseDoubt) + Square(after.Passes[0].WheelbaseDoubt));
        double Own(SeenCar car, int film) => car.Numbers[film].PitchPerLift is var n
            ? Math.Max(0.0, Square(0.5 * (n.High - n.Low) / n.Value) - Square(car.Passes[film].WheelbaseDoubt)) : 0.0;
        double[] logs =
        [
            .. pairs.Select(p => Math.Log(after.Numbers[p.After].PitchPerLift.Value / before.Numbers[p.Before].PitchPerLift.Value)),
        ];
        var log = logs.Average();
        var told = pairs.Average(p => Own(before, p.Before) + Own(after, p.After) + (2.0 * Square(Gaussian.Ninety * OnePass)));
        var parted = ((Planted * told) + logs.Sum(l => Square(Gaussian.Ninety * (l - log)))) / (Planted + logs.Length - 1.0);
        var half = Math.Sqrt((Math.Max(told, parted) / logs.Length) + Square(ruler));
        return new FilmNumber(Math.Exp(log), Math.Exp(log - half), Math.Exp(log + half));
    }

    private static double Square(double x) => x * x;

    private static FilmNumber Ratio((double Log, double Half) before, (double Log, double Half) after)
    {
        var (log, half) = (after.Log - before.Log, Math.Sqrt((before.Half * before.Half) + (after.Half * after.Half)));
        return new FilmNumber(Math.Exp(log), Math.Exp(log - half), Math.Exp(log + half));
    }

    private static FilmNumber Change(CarEstimate before, CarEstimate after)
    {
        if (before.Number == CarNumber.PitchIndex)
        {
            var half = 0.5 * Math.Sqrt(Math.Pow(before.High - before.Low, 2.0) + Math.Pow(after.High - after.Low, 2.0));
            return new FilmNumber(after.Value - before.Value, after.Value - before.Value - half, after.Value - before.Value + half);
        }

        (double, double) Log(CarEstimate e) => (Math.Log(e.Value), 0.5 * Math.Log(e.High / e.Low));
        return Ratio(Log(before), Log(after));
    }
}
