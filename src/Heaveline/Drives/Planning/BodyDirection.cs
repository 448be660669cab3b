using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Drives.Planning;

/// <summary>
/// One way for the body to move, seen from the side, as a unit vector over (ż, k·θ̇) with k the radius of gyration: half the squared length of such a
/// vector is the body's energy of motion per kilogram, so squares are shares of that energy. The two body modes stand square to each other.
/// </summary>
/// <param name="Heave">Share of the heave, cosine.</param>
/// <param name="Turn">Share of k times the pitch, sine.</param>
internal readonly record struct BodyDirection(double Heave, double Turn)
{
    public static BodyDirection Of(RideModel model, PlankGoal goal)
    {
        if (goal == PlankGoal.Pitch)
        {
            return new(0.0, 1.0);
        }

        var modes = BodyModes.Of(model);
        var mode = goal == PlankGoal.First ? modes.First : modes.Second;
        // The body swings about a point so far ahead: z = ahead·θ.
        return double.IsFinite(mode.NodeAhead) ? Unit(mode.NodeAhead, Gyration(model)) : new(1.0, 0.0);
    }

    /// <summary>Radius of gyration in pitch, m.</summary>
    public static double Gyration(RideModel model) => Math.Sqrt(model.Body.PitchInertia / model.Body.Mass);

    /// <summary>Speed of the end that moves farther, per unit along this direction.</summary>
    public double FartherEnd(RideModel model)
    {
        var turn = Turn / Gyration(model);
        return Math.Max(Math.Abs(Heave - (model.X[0] * turn)), Math.Abs(Heave - (model.X[2] * turn)));
    }

    private static BodyDirection Unit(double heave, double turn)
    {
        var length = Math.Sqrt((heave * heave) + (turn * turn));
        return new(heave / length, turn / length);
    }
}
