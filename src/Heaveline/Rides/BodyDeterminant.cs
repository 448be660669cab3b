using System.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Heave and pitch of a linear body with its wheels eliminated, at one place s of the complex plane: the determinant of the two equations, its slope,
/// and what a road height under either end makes of the pitch, times the determinant.
/// </summary>
internal readonly struct BodyDeterminant
{
    /// <param name="car">The car, alike on both sides.</param>
    /// <param name="s">The place, 1/s.</param>
    public BodyDeterminant(in SymmetricRide car, Complex s)
    {
        var ((gf, hf, slopef), (gr, hr, sloper)) = (End(car.Front, s), End(car.Rear, s));
        var (xf, xr, s2) = (car.Front.X, car.Rear.X, s * s);
        var heave = (car.Mass * s2) + hf + hr;
        var cross = (xf * hf) + (xr * hr);
        var pitch = (car.PitchInertia * s2) - car.PitchGravity + (xf * xf * hf) + (xr * xr * hr);
        Value = (heave * pitch) - (cross * cross);
        var heaveSlope = (2.0 * car.Mass * s) + slopef + sloper;
        var crossSlope = (xf * slopef) + (xr * sloper);
        var pitchSlope = (2.0 * car.PitchInertia * s) + (xf * xf * slopef) + (xr * xr * sloper);
        Slope = (heaveSlope * pitch) + (heave * pitchSlope) - (2.0 * cross * crossSlope);
        Front = gf * (cross - (xf * heave));
        Rear = gr * (cross - (xr * heave));
    }

    /// <summary>The determinant.</summary>
    public Complex Value { get; }

    /// <summary>Its derivative.</summary>
    public Complex Slope { get; }

    /// <summary>Pitch per height under the front end, times the determinant.</summary>
    public Complex Front { get; }

    /// <summary>The same under the rear end.</summary>
    public Complex Rear { get; }

    // What of a road height reaches the body, what holds the body, and the slope of the latter.
    private static (Complex Passed, Complex Held, Complex Slope) End(in SymmetricAxle end, Complex s)
    {
        var z = end.Rate + (end.Damping * s);
        var tyre = end.TyreRate + (end.TyreDamping * s);
        var wheel = tyre + (end.HopMass * s * s);
        var inverse = 1.0 / (z + wheel);
        var slope = ((end.Damping * wheel * wheel) + (z * z * (end.TyreDamping + (2.0 * end.HopMass * s)))) * inverse * inverse;
        return (z * tyre * inverse, z * wheel * inverse, slope);
    }
}
