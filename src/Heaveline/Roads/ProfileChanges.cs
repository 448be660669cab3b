using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <content>A profile made from another.</content>
public sealed partial class Profile
{
    /// <summary>
    /// The profile as a tyre's contact length c passes it on: r(x) = (1/c) ∫ h from x − c/2 to x + c/2, within 1e-7 m, heights and slopes
    /// exact at its knots. It has no jump. No contact length gives the profile itself.
    /// </summary>
    /// <param name="contact">c, 0, or 1 mm to 1 m.</param>
    public Profile AveragedOver(Amount<Length> contact)
    {
        if (contact.Si == 0.0)
        {
            return this;
        }

        _ = Checked.Within(
            contact, 1e-3, 1.0, "Give the length of the tyre's contact patch, usually 100 to 200 mm, or 0 for a point.", "ContactLength");
        var average = new ContactAverage(AllKnots, AllCoefficients, contact.Si);
        if (AllKnots.Length > LongAverage.From)
        {
            return new Profile(new LongAverage(average));
        }

        var (averageKnots, averageCoefficients) = average.Whole();
        return new Profile(averageKnots, averageCoefficients);
    }

    /// <summary>Every height times a factor.</summary>
    /// <param name="factor">Factor of heights and slopes (–), finite.</param>
    public Profile Scaled(double factor)
    {
        _ = Checked.Within(factor, -double.MaxValue, double.MaxValue, "Give a finite factor.", "HeightFactor");
        return new Profile(AllKnots, Array.ConvertAll(AllCoefficients, c => factor * c));
    }

    /// <summary>The same road further along: h(x − distance).</summary>
    /// <param name="distance">Shift forwards, m, finite.</param>
    public Profile Shifted(double distance)
    {
        _ = Checked.Within(distance, -double.MaxValue, double.MaxValue, "Give a finite distance.", "Distance");
        return new Profile(Array.ConvertAll(AllKnots, x => x + distance), AllCoefficients);
    }

    /// <summary>
    /// The profile less the straight line from its first height to its last, so that both ends lie at 0.
    /// A long climb costs a number with few digits its small heights; the line carries no unevenness. A road of no length (one sharp step) has
    /// no such line and only begins at 0.
    /// </summary>
    public Profile Detrended()
    {
        var length = End - Start;
        var grade = length > 0.0 ? (EndHeight - StartHeight) / length : 0.0;
        var flattened = (double[])AllCoefficients.Clone();
        for (var i = 0; i < AllKnots.Length; i++)
        {
            flattened[Cubic.Order * i] -= StartHeight + (grade * (AllKnots[i] - Start));
            flattened[(Cubic.Order * i) + 1] -= grade;
        }

        // Past the last knot the road is level by definition: the line ends there too.
        flattened[^Cubic.Order] = length > 0.0 ? 0.0 : EndHeight - StartHeight;
        flattened[^3] = 0.0;
        return new Profile(AllKnots, flattened);
    }

    /// <summary>This profile and then another that begins where this one has ended, raised to join it.</summary>
    internal Profile Then(Profile next)
    {
        if (next.Start < End)
        {
            throw new RefusedValueException(
                "distance of the second profile",
                FormattableString.Invariant($"{next.Start:G6} m"),
                FormattableString.Invariant($"at or after {End:G6} m"),
                "Leave a gap of 0 m or more between them.");
        }

        var rise = EndHeight - next.StartHeight;
        var joinedKnots = new double[AllKnots.Length + next.AllKnots.Length];
        var joined = new double[Cubic.Order * joinedKnots.Length];
        AllKnots.CopyTo(joinedKnots, 0);
        next.AllKnots.CopyTo(joinedKnots, AllKnots.Length);
        AllCoefficients.CopyTo(joined, 0);
        next.AllCoefficients.CopyTo(joined, AllCoefficients.Length);
        for (var i = AllKnots.Length; i < joinedKnots.Length; i++)
        {
            joined[Cubic.Order * i] += rise;
        }

        return new Profile(joinedKnots, joined);
    }
}
