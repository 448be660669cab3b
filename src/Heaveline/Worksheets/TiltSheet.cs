using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// Height of the centre of gravity from a tilt test. With the axle line at α above level, N_f/W = p/L − (h/L)·tan α (p ahead of the rear axle and h
/// above the axle line, both along it), so that two tilts give h = L·ΔN/(W·|tan α₂ − tan α₁|); unequal wheels make
/// the level car's α₁ = asin((R_f − R_r)/L).
/// </summary>
public sealed record TiltSheet
{
    /// <summary>Load that the tilt moved onto the lower axle, kg.</summary>
    public required double Moved { get; init; }

    /// <summary>Height of the whole car's centre of gravity above the line through the wheel centres, m.</summary>
    public required Amount<Length> AboveAxleLine { get; init; }

    /// <summary>Height of the whole car's centre of gravity above the ground, car level, m.</summary>
    public required Amount<Length> AboveGround { get; init; }

    /// <summary>What each input's doubt makes of <see cref="AboveGround"/>, largest first.</summary>
    public required IReadOnlyList<ErrorPart> Budget { get; init; }

    /// <summary>What the test says about itself, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Works the sheet out.</summary>
    /// <exception cref="RefusedValueException">The tilt moved no load onto the lower axle, or an axle carries more than the car.</exception>
    public static TiltSheet Of(TiltReadings tilt)
    {
        ArgumentNullException.ThrowIfNull(tilt);
        if (tilt.Level.Si >= tilt.Total.Si || tilt.Lifted.Si >= tilt.Total.Si || tilt.Level.Si <= 0.0)
        {
            throw new RefusedValueException(
                "axle load",
                $"{tilt.Level.Si:G5} and {tilt.Lifted.Si:G5} kg",
                $"above 0 and below the whole car's {tilt.Total.Si:G5} kg",
                "Give the load of the one axle that stays down.");
        }

        if (tilt.Lifted.Si <= tilt.Level.Si)
        {
            throw new RefusedValueException(
                "lifted reading",
                $"{tilt.Lifted.Si:G5} kg",
                $"above the {tilt.Level.Si:G5} kg of the level car",
                "Lifting one axle loads the other as long as the centre of gravity lies above the wheel centres: "
                + "check which axle stood on the scales.");
        }

        double[] inputs = [tilt.Total.Si, tilt.Level.Si, tilt.Lifted.Si, tilt.Angle.Si, tilt.Wheelbase.Si, tilt.FrontRadius.Si, tilt.RearRadius.Si];
        double[] doubts =
        [
            tilt.Total.Doubt.HalfWidth,
            tilt.Level.Doubt.HalfWidth,
            tilt.Lifted.Doubt.HalfWidth,
            tilt.Angle.Doubt.HalfWidth,
            tilt.Wheelbase.Doubt.HalfWidth,
            tilt.FrontRadius.Doubt.HalfWidth,
            tilt.RearRadius.Doubt.HalfWidth,
        ];
        string[] names = ["whole car's weight", "level reading", "lifted reading", "angle", "wheelbase", "front wheel radius", "rear wheel radius"];
        var front = tilt.LiftedEnd == AxleEnd.Front;
        double Above(double[] v) => Heights(v, front).AxleLine;
        double Ground(double[] v) => Heights(v, front).Ground;
        var parts = DoubtBudget.Parts(Ground, inputs, doubts);
        return new TiltSheet
        {
            Moved = tilt.Lifted.Si - tilt.Level.Si,
            AboveAxleLine = new(Above(inputs), new Doubt(DoubtBudget.Of(Above, inputs, doubts))),
            AboveGround = new(Ground(inputs), new Doubt(DoubtBudget.Of(Ground, inputs, doubts))),
            Budget = [.. names.Zip(parts, (n, p) => new ErrorPart(n, p)).Where(p => p.HalfWidth > 0.0).OrderByDescending(p => p.HalfWidth)],
            Notes = [.. NotesOf(tilt)],
        };
    }

    /// <summary>
    /// Height of the sprung body's centre of gravity, as a car file wants it: the whole car's without the wheels at their radius, m.
    /// </summary>
    /// <param name="total">The whole car, kg.</param>
    /// <param name="unsprung">All unsprung mass, kg.</param>
    /// <param name="radius">Height of its centre, m.</param>
    public Amount<Length> BodyHeight(Amount<Mass> total, Amount<Mass> unsprung, Amount<Length> radius)
    {
        if (!(unsprung.Si >= 0.0 && unsprung.Si < total.Si))
        {
            throw new RefusedValueException(
                "unsprung mass",
                $"{unsprung.Si:G5} kg",
                $"0 or above and below the whole car's {total.Si:G5} kg",
                "It is the wheels, hubs and brakes with half of arms and springs.");
        }

        double Body(double[] v) => ((v[0] * v[1]) - (v[2] * v[3])) / (v[0] - v[2]);
        double[] inputs = [total.Si, AboveGround.Si, unsprung.Si, radius.Si];
        return new(Body(inputs), new Doubt(DoubtBudget.Of(
            Body, inputs, [total.Doubt.HalfWidth, AboveGround.Doubt.HalfWidth, unsprung.Doubt.HalfWidth, radius.Doubt.HalfWidth])));
    }

    private static (double AxleLine, double Ground) Heights(double[] v, bool frontLifted)
    {
        var (total, level, lifted, angle, wheelbase, frontRadius, rearRadius) = (v[0], v[1], v[2], v[3], v[4], v[5], v[6]);
        var before = Math.Asin((frontRadius - rearRadius) / wheelbase);
        var after = before + (frontLifted ? angle : -angle);
        var height = wheelbase * (lifted - level) / (total * Math.Abs(Math.Tan(after) - Math.Tan(before)));
        var onFront = frontLifted ? total - level : level;
        var ahead = (wheelbase * onFront / total) + (height * Math.Tan(before));
        return (height, rearRadius + (ahead * Math.Sin(before)) + (height * Math.Cos(before)));
    }

    private static IEnumerable<SheetNote> NotesOf(TiltReadings tilt)
    {
        if (!tilt.Locked)
        {
            yield return new(
                "not-locked",
                "The suspension was not locked: the low end sinks and the body turns further than the wheels; the height comes out wrong by an "
                + "amount that the budget does not hold.");
        }

        if (In.Degrees.Of(tilt.Angle.Si) < 8.0)
        {
            yield return new("small-tilt", "The tilt is small: the same scales at twice the angle halve the doubt.");
        }

        if (!tilt.Angle.Doubt.IsStated || !tilt.Lifted.Doubt.IsStated)
        {
            yield return new("doubt-missing", "A doubt is missing for the angle or the readings: the stated doubt is too small.");
        }

        yield return new(
            "loose-things",
            "Fill or empty the tank (fuel runs to the low end), tie down what can roll inside, brake and gear off while you read: a wheel "
            + "that is held pushes the scales apart.");
        yield return new(
            "lifted-car",
            "A lifted car falls and rolls: stand it on level, firm ground, chock the wheels that stay down fore and aft, a finger's width off the "
            + "tyre, set stands under the lifted end at every step and hold it by a strap to a fixed point, nobody under the car or near its ends.");
    }
}
