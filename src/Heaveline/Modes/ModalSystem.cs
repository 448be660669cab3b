using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>
/// The tangent equations p̈ = A_p·p + A_v·ṗ in plain motions p, all in metres. A car that is alike on both sides falls apart there into the motions
/// of the side view and those of the front view.
/// </summary>
internal sealed record ModalSystem
{
    /// <summary>The motions p, in order.</summary>
    public required IReadOnlyList<Motion> Motions { get; init; }

    /// <summary>Positions of the tangent from motions, q = T·p, shape (7 or 9, motions).</summary>
    public required Matrix<double> Positions { get; init; }

    /// <summary>Accelerations per place, 1/s².</summary>
    public required Matrix<double> ByPlace { get; init; }

    /// <summary>Accelerations per speed, 1/s.</summary>
    public required Matrix<double> BySpeed { get; init; }

    /// <summary>Mass matrix in p, kg.</summary>
    public required Matrix<double> Mass { get; init; }

    /// <summary>Damping matrix in p, N s/m.</summary>
    public required Matrix<double> Damping { get; init; }

    /// <summary>Whether a motion has a speed of its own: a flow without inertance has none, and its row gives its rate.</summary>
    public required IReadOnlyList<bool> HasSpeed { get; init; }

    public static ModalSystem Of(RideModel model)
    {
        var tangent = model.Tangent;
        var n = tangent.Positions;
        var motions = MotionsOf(model);
        var to = Matrix<double>.Build.Dense(n, motions.Count);
        var from = Matrix<double>.Build.Dense(motions.Count, n);
        for (var k = 0; k < motions.Count; k++)
        {
            Place(model, motions[k], k, to, from);
        }

        var mass = MassOf(model);
        var resistance = Matrix<double>.Build.Dense(n, n);
        for (var i = tangent.Rates; i < n; i++)
        {
            resistance[i, i] = model.Numbers.Elements.Line!.Resistance;
        }

        return new ModalSystem
        {
            Motions = motions,
            Positions = to,
            ByPlace = from * tangent.ByPlace * to,
            BySpeed = from * tangent.BySpeed * to,
            Mass = to.Transpose() * mass * to,
            // A_v = −M⁻¹·C, so C = −M·A_v; a flow without inertance has its resistance alone.
            Damping = to.Transpose() * (resistance - (mass * tangent.BySpeed)) * to,
            HasSpeed = [.. motions.Select(m => !IsFlow(m) || tangent.Rates == n)],
        };
    }

    /// <summary>Groups of motions that have nothing to do with each other, by index: one group, or side view and front view.</summary>
    public IReadOnlyList<int[]> Groups()
    {
        var all = Enumerable.Range(0, Motions.Count).ToArray();
        int[] side = [.. all.Where(k => !IsFrontView(Motions[k]))];
        int[] front = [.. all.Where(k => IsFrontView(Motions[k]))];
        // Larger than rounding, far smaller than any load that a scale can tell apart.
        var negligible = 1e-11;
        var apart = front.Length > 0 && side.All(i => front.All(j => Small(ByPlace, i, j) && Small(BySpeed, i, j)));
        return apart ? [side, front] : [all];

        bool Small(Matrix<double> a, int i, int j) =>
            Math.Max(Math.Abs(a[i, j]), Math.Abs(a[j, i])) <= negligible * Math.Max(1e-3, Math.Max(Math.Abs(a[i, i]), Math.Abs(a[j, j])));
    }

    private static bool IsFlow(Motion motion) => motion is Motion.Flow or Motion.CrossFlow;

    private static bool IsFrontView(Motion motion) => motion is Motion.Roll or Motion.FrontTramp or Motion.RearTramp or Motion.CrossFlow;

    private static List<Motion> MotionsOf(RideModel model)
    {
        var flows = model.Numbers.Elements.Line is not null;
        List<Motion> motions = model.Rolls
            ? [Motion.Heave, Motion.Pitch, Motion.Roll, Motion.FrontHop, Motion.FrontTramp, Motion.RearHop, Motion.RearTramp]
            : [Motion.Heave, Motion.Pitch, Motion.FrontHop, Motion.RearHop];
        if (flows)
        {
            motions.Add(Motion.Flow);
        }

        if (flows && model.Rolls)
        {
            motions.Add(Motion.CrossFlow);
        }

        return motions;
    }

    // One motion as a column of positions per metre of it, and as the row that reads it off the positions.
    private static void Place(RideModel model, Motion motion, int k, Matrix<double> to, Matrix<double> from)
    {
        void Single(int position, double perMetre)
        {
            to[position, k] = perMetre;
            from[k, position] = 1.0 / perMetre;
        }

        void Both(int left, double perMetre, double right)
        {
            to[left, k] = perMetre;
            to[left + 1, k] = right * perMetre;
            from[k, left] = 0.5 / perMetre;
            from[k, left + 1] = 0.5 * right / perMetre;
        }

        var track = 0.5 * (model.Car.Front.Track.Si + model.Car.Rear.Track.Si);
        switch (motion)
        {
            case Motion.Heave:
                Single(0, 1.0);
                break;
            case Motion.Pitch:
                Single(1, 2.0 / model.Car.Wheelbase.Si);
                break;
            case Motion.Roll:
                Single(2, 2.0 / track);
                break;
            case Motion.FrontHop or Motion.RearHop:
                Both(motion == Motion.FrontHop ? 3 : 5, 1.0, +1.0);
                break;
            case Motion.FrontTramp or Motion.RearTramp:
                Both(motion == Motion.FrontTramp ? 3 : 5, 1.0, -1.0);
                break;
            default:
                var units = model.Numbers.Elements.Accumulators;
                Both(7, Math.Sqrt(units[0].Sight.Wheels[0] * units[2].Sight.Wheels[2]), motion == Motion.Flow ? +1.0 : -1.0);
                break;
        }
    }

    private static Matrix<double> MassOf(RideModel model)
    {
        var n = model.Numbers;
        var mass = Matrix<double>.Build.Dense(model.Tangent.Positions, model.Tangent.Positions);
        mass[0, 0] = n.Body.Mass;
        mass[1, 1] = n.Body.PitchInertia;
        mass[2, 2] = n.Body.RollInertia;
        mass[1, 2] = mass[2, 1] = -n.Body.InertiaProduct;
        for (var i = 3; i < 7; i++)
        {
            // Inverse of [own across; across own] of the axle's two wheel ends.
            var (own, across) = (n.PerWheel[i - 3], n.AcrossAxle[i - 3]);
            var determinant = (own * own) - (across * across);
            mass[i, i] = own / determinant;
            mass[i, 3 + ((i - 3) ^ 1)] = -across / determinant;
        }

        for (var i = 7; i < mass.RowCount; i++)
        {
            mass[i, i] = n.Elements.Line!.Inertance;
        }

        return mass;
    }
}
