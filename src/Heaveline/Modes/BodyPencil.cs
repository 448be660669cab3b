namespace Heaveline.Modes;

/// <summary>
/// Mass and stiffness of the sprung body in its motions up over the front and over the rear axle: the equation (K − λM)·h = 0 whose two roots λ = ω²
/// are the body modes.
/// </summary>
/// <param name="MassFront">M of the front motion, kg.</param>
/// <param name="MassBetween">M between both, kg.</param>
/// <param name="MassRear">M of the rear motion, kg.</param>
/// <param name="RateFront">K of the front motion, N/m.</param>
/// <param name="RateBetween">K between both, N/m.</param>
/// <param name="RateRear">K of the rear motion, N/m.</param>
internal readonly record struct BodyPencil(
    double MassFront, double MassBetween, double MassRear, double RateFront, double RateBetween, double RateRear)
{
    /// <summary>
    /// Two frequencies that come nearer to each other than this (–) on the way from one car to another pass through one another, each with its shape;
    /// others never change places. Our own choice: far below what the doubts of a car leave of a frequency.
    /// </summary>
    public const double Meeting = 0.01;

    private const int Steps = 256;

    /// <summary>Of a body with its axles' rates.</summary>
    /// <param name="mass">Sprung mass, kg.</param>
    /// <param name="gyrationSquared">Square of the radius of gyration in pitch, m².</param>
    /// <param name="ahead">Length from the centre of gravity to the front axle, m.</param>
    /// <param name="behind">Length from the centre of gravity to the rear axle, m.</param>
    /// <param name="rates">Rates of both axles, N/m: front, between both, rear.</param>
    /// <param name="pitchGravity">Gravity's tilting moment, N m/rad.</param>
    public static BodyPencil Of(
        double mass, double gyrationSquared, double ahead, double behind, (double Front, double Between, double Rear) rates, double pitchGravity)
    {
        // With f and r over the axles the centre of gravity rises by (c·f + b·r)/L and the body turns by (r − f)/L.
        var length = ahead + behind;
        var (m, tilt) = (mass / (length * length), pitchGravity / (length * length));
        return new(
            m * ((behind * behind) + gyrationSquared),
            m * ((ahead * behind) - gyrationSquared),
            m * ((ahead * ahead) + gyrationSquared),
            rates.Front - tilt,
            rates.Between + tilt,
            rates.Rear - tilt);
    }

    /// <summary>
    /// Whether the slower mode becomes the faster one on the straight way from one car's masses and rates to another's, followed in small steps by
    /// its shape (modal assurance criterion, weighted by the masses of each step).
    /// </summary>
    public static bool Exchanges(BodyPencil from, BodyPencil to)
    {
        var (before, exchanged) = (from.Solved(), false);
        for (var step = 1; step <= Steps; step++)
        {
            var on = from.Toward(to, (double)step / Steps);
            var now = on.Solved();
            // Where both frequencies are one, any shape is one of a mode.
            if (step == Steps || !now.Meets)
            {
                exchanged ^= on.Overlap(before.Slow, now.Fast) + on.Overlap(before.Fast, now.Slow)
                    > on.Overlap(before.Slow, now.Slow) + on.Overlap(before.Fast, now.Fast);
                before = now;
            }
        }

        return exchanged;
    }

    private BodyPencil Toward(BodyPencil to, double share)
    {
        double Between(double one, double other) => one + (share * (other - one));
        return new(
            Between(MassFront, to.MassFront),
            Between(MassBetween, to.MassBetween),
            Between(MassRear, to.MassRear),
            Between(RateFront, to.RateFront),
            Between(RateBetween, to.RateBetween),
            Between(RateRear, to.RateRear));
    }

    // With M = C·Cᵀ the roots are those of the symmetric C⁻¹·K·C⁻ᵀ, and its vectors y give h = C⁻ᵀ·y.
    private Pair Solved()
    {
        var c11 = Math.Sqrt(MassFront);
        var c21 = MassBetween / c11;
        var c22 = Math.Sqrt(MassRear - (c21 * c21));
        var a11 = RateFront / MassFront;
        var a12 = ((RateBetween / c11) - (c21 * a11)) / c22;
        var a22 = (RateRear - (2.0 * c21 * RateBetween / c11) + (c21 * c21 * a11)) / (c22 * c22);
        var spread = Math.Sqrt((0.25 * (a11 - a22) * (a11 - a22)) + (a12 * a12));
        var (sin, cos) = Math.SinCos(0.5 * Math.Atan2(2.0 * a12, a11 - a22));
        (double, double) Shape(double first, double second) => ((first - (c21 * second / c22)) / c11, second / c22);
        // ω differs by half as large a share as ω² does.
        return new(Shape(-sin, cos), Shape(cos, sin), spread < Meeting * 0.5 * (a11 + a22));
    }

    private double Overlap((double Front, double Rear) one, (double Front, double Rear) other)
    {
        var product = Product(one, other);
        return product * product / (Product(one, one) * Product(other, other));
    }

    private double Product((double Front, double Rear) one, (double Front, double Rear) other) =>
        (MassFront * one.Front * other.Front) + (MassBetween * ((one.Front * other.Rear) + (one.Rear * other.Front)))
        + (MassRear * one.Rear * other.Rear);

    private readonly record struct Pair((double Front, double Rear) Slow, (double Front, double Rear) Fast, bool Meets);
}
