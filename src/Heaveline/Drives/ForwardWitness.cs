using Heaveline.Numerics;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>A direction that is taken for forward, and what it rests on.</summary>
/// <param name="Angle">Its angle about up from the first horizontal axis, rad.</param>
/// <param name="HalfWidth">Half-width of the angle's 90 % interval, rad.</param>
/// <param name="By">What it rests on, in words that follow a comma.</param>
internal sealed record ForwardWitness(double Angle, double HalfWidth, string By)
{
    // Standard deviations of 90 % intervals: beyond three of the difference two witnesses contradict each other.
    private const double Contradiction = 3.0 / Gaussian.Ninety;

    // Before this half-width a direction does not tell one end of a line from the other, rad.
    private static readonly double Ended = 60.0 / In.Degrees.Factor;

    /// <summary>
    /// Forward without a speed: bends tell left by the acceleration across the car, bumps by the line about which the body turns; each weighs by its
    /// half-width.
    /// </summary>
    /// <param name="bends">Turning alone, fitted; null where the drive is too short.</param>
    /// <param name="bumps">The line of the bumps; null where there are too few.</param>
    /// <param name="whyNot">Why there is none, a sentence; blank where there is.</param>
    public static ForwardWitness? Without(ForwardFit? bends, BumpLine? bumps, out string whyNot)
    {
        whyNot = "";
        var (turning, doubt) = bends is { Explained: > 0.0 } fit ? (fit.Angle, fit.HalfWidth) : (0.0, Math.PI);
        var line = bumps is null || (!bumps.IsSided && doubt > Ended) ? null : bumps;
        if (line is null)
        {
            if (doubt <= Mount.Refused)
            {
                return new ForwardWitness(turning, doubt, "from bends alone");
            }

            whyNot = bumps is not null
                ? Text($"The line about which {bumps.Bumps} bumps turn the body is seen, but not which end of it is left. ")
                    + "Log the speed, or take two bends."
                : "There is no speed of this drive to compare braking and turning with, and bends and bumps alone leave forward open. Log the speed.";
            return null;
        }

        // The line's forward lies to the right of its left; where bends tell the end, at their side.
        var ahead = line.Angle - (0.5 * Math.PI);
        var off = Math.IEEERemainder(ahead - turning, 2.0 * Math.PI);
        var joint = Math.Sqrt((line.HalfWidth * line.HalfWidth) + (doubt * doubt));
        if (doubt <= Ended)
        {
            if (!line.IsSided && Math.Abs(off) > 0.5 * Math.PI)
            {
                (ahead, off) = (ahead + Math.PI, Math.IEEERemainder(off + Math.PI, 2.0 * Math.PI));
            }

            if (Math.Abs(off) > Math.Max(Contradiction * joint, Mount.Doubtful))
            {
                whyNot = Text($"Without a speed, bends and bumps tell two directions for forward, {Math.Abs(In.Degrees.Of(off)):F0}° apart.");
                return null;
            }
        }

        var bumpWords = Text($"from the line about which {line.Bumps} bumps turn the body")
            + (line.IsSided ? "; the nose meets a bump first" : "");
        if (doubt > Ended)
        {
            return new ForwardWitness(ahead, line.HalfWidth, bumpWords);
        }

        var (one, other) = (1.0 / (line.HalfWidth * line.HalfWidth), 1.0 / (doubt * doubt));
        return new ForwardWitness(ahead - (off * other / (one + other)), 1.0 / Math.Sqrt(one + other), "from bends and " + bumpWords);
    }

    /// <summary>How far the bumps' line lies from the left of a forward, rad, where that is more than chance; null where it is not.</summary>
    /// <param name="bumps">The line; null where there are too few bumps.</param>
    public double? Aside(BumpLine? bumps)
    {
        if (bumps is null)
        {
            return null;
        }

        var off = Math.Abs(Math.IEEERemainder(bumps.Angle - Angle - (0.5 * Math.PI), Math.PI));
        var joint = Math.Sqrt((bumps.HalfWidth * bumps.HalfWidth) + (HalfWidth * HalfWidth));
        return off > Math.Max(Mount.Refused, Contradiction * joint) ? off : null;
    }
}
