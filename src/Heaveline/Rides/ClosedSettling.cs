using System.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// The pitch of a linear car in the second after its rear wheels have left an obstacle, in closed form: of the car's four motions the two of its body
/// alone swing that long. Their poles are found on the body's two equations with the wheels eliminated, the rest is the obstacle's transform at them.
/// </summary>
/// <remarks>
/// Per end z = k + sc, τ = k_t + sc_t, W = τ + s²m, D = z + W: a road height r reaches the body as g·r, g = zτ/D, and the body's own motion is held
/// by
/// Σ = zW/D. Known wrong: where a wheel hop still swings when the rear has left (short obstacles taken fast), where a wheel leaves the road, where a
/// stop is touched, and as far as dampers push the body by being unlike in bump and rebound. A sieve and a first look, no judge.
/// </remarks>
internal sealed class ClosedSettling
{
    private const int MostSteps = 25;

    private readonly Complex[] poles = new Complex[2];
    private readonly Complex[] front = new Complex[2];
    private readonly Complex[] rear = new Complex[2];

    private ClosedSettling()
    {
    }

    /// <summary>The two poles of the body with a positive frequency, 1/s.</summary>
    public IReadOnlyList<Complex> Poles => poles;

    /// <summary>Of a car; null where its body does not swing twice: a motion is damped past swinging.</summary>
    /// <param name="car">The car, alike on both sides and without an interconnection.</param>
    public static ClosedSettling? Of(in SymmetricRide car)
    {
        if (car.IsLinked)
        {
            throw new ArgumentException("What joins front and rear is not in the closed form.", nameof(car));
        }

        var found = new ClosedSettling();
        for (var k = 0; k < 2; k++)
        {
            if (!found.Find(car, k))
            {
                return null;
            }
        }

        return found;
    }

    /// <summary>Root mean square pitch of the first second, rad.</summary>
    /// <param name="bump">The obstacle at its speed.</param>
    public double Rms(SettlingBump bump)
    {
        Span<Complex> amplitude = stackalloc Complex[2];
        Span<Complex> second = stackalloc Complex[2];
        for (var k = 0; k < 2; k++)
        {
            // Horner over the heights at even times; the first and the last are nought, so that the sum is the trapezoid's.
            var (turn, transform) = (Complex.Exp(-bump.Step * poles[k]), Complex.Zero);
            for (var j = bump.Heights.Length - 1; j >= 0; j--)
            {
                transform = bump.Heights[j] + (transform * turn);
            }

            amplitude[k] = bump.Step * transform
                * ((front[k] * Complex.Exp(bump.Left * poles[k])) + (rear[k] * Complex.Exp((bump.Left - bump.Delay) * poles[k])));
            second[k] = Complex.Exp(poles[k]);
        }

        // θ = 2·Re Σ a·e^{λt}: its square over one second, term by term.
        var sum = 0.0;
        for (var k = 0; k < 2; k++)
        {
            for (var l = 0; l < 2; l++)
            {
                var (same, other) = (poles[k] + poles[l], poles[k] + Complex.Conjugate(poles[l]));
                sum += 2.0 * (amplitude[k] * amplitude[l] * (((second[k] * second[l]) - 1.0) / same)).Real;
                sum += 2.0 * (amplitude[k] * Complex.Conjugate(amplitude[l]) * (((second[k] * Complex.Conjugate(second[l])) - 1.0) / other)).Real;
            }
        }

        return Math.Sqrt(Math.Max(sum, 0.0));
    }

    // Newton on the determinant from the frequency of an end by itself; for the second pole the first pair is divided out.
    private bool Find(in SymmetricRide car, int k)
    {
        var (own, other) = k == 0 ? (car.Front, car.Rear) : (car.Rear, car.Front);
        var mass = car.Mass * -other.X / (own.X - other.X);
        if (!(own.Rate > 0.0) || !(mass > 0.0))
        {
            return false;
        }

        var frequency = Math.Sqrt(own.Rate * own.TyreRate / (own.Rate + own.TyreRate) / mass);
        var damping = Math.Min(0.9, own.Damping / (2.0 * Math.Sqrt(own.Rate * mass)));
        var s = new Complex(-damping * frequency, frequency * Math.Sqrt(1.0 - (damping * damping)));
        for (var step = 0; ; step++)
        {
            var at = new BodyDeterminant(car, s);
            var newton = at.Value / at.Slope;
            if (k == 1)
            {
                newton /= 1.0 - (newton * ((1.0 / (s - poles[0])) + (1.0 / (s - Complex.Conjugate(poles[0])))));
            }

            s -= newton;
            if (Squared(newton) < 1e-20 * Squared(s))
            {
                break;
            }

            if (step == MostSteps || !double.IsFinite(s.Real))
            {
                return false;
            }
        }

        // In one swing of twenty seconds nothing settles, and what grows does not settle at all.
        if (!(s.Imaginary > 0.3) || s.Real > 0.0)
        {
            return false;
        }

        poles[k] = s;
        var found = new BodyDeterminant(car, s);
        (front[k], rear[k]) = (found.Front / found.Slope, found.Rear / found.Slope);
        return true;
    }

    private static double Squared(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
