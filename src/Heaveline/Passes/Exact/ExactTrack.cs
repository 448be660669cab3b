using Heaveline.Roads;

namespace Heaveline.Passes.Exact;

/// <summary>
/// The road under one wheel at constant speed, counted from the track's first height: a cubic in time between the times at which the wheel passes the
/// profile's knots.
/// </summary>
/// <param name="profile">Height over distance.</param>
/// <param name="speed">Speed, m/s.</param>
/// <param name="delay">Time at which the wheel passes x = 0, s.</param>
internal sealed class ExactTrack(Profile profile, double speed, double delay)
{
    /// <summary>Number of coefficients in time.</summary>
    public const int Order = 4;

    // A border nearer than this is reached, s. Cubics hold a hair outside their own piece, and outputs on a border get the slope ahead.
    private const double Meets = 1e-12;

    private int piece = -1;

    /// <summary>When the next piece begins, s; infinite on the last.</summary>
    public double NextBorder => piece + 1 < profile.Knots.Length ? (profile.Knots[piece + 1] / speed) + delay : double.PositiveInfinity;

    /// <summary>Moves on to the piece that holds at time <paramref name="t"/>.</summary>
    public void MoveTo(double t)
    {
        while (NextBorder <= t + Meets)
        {
            piece++;
        }
    }

    /// <summary>Height as a polynomial in the time from <paramref name="t"/>.</summary>
    /// <param name="t">Time, s, within the present piece.</param>
    /// <param name="height">Receives <see cref="Order"/> coefficients, m/sᵏ.</param>
    public void Expand(double t, Span<double> height)
    {
        if (piece < 0)
        {
            height.Clear();
            return;
        }

        var c = profile.Coefficients.Slice(Order * piece, Order);
        var d = (speed * (t - delay)) - profile.Knots[piece];
        height[0] = c[0] - profile.StartHeight + (d * (c[1] + (d * (c[2] + (d * c[3])))));
        height[1] = speed * (c[1] + (d * ((2.0 * c[2]) + (3.0 * d * c[3]))));
        height[2] = speed * speed * (c[2] + (3.0 * d * c[3]));
        height[3] = speed * speed * speed * c[3];
    }
}
