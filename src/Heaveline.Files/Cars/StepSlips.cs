using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// Values that make a car so stiff, or so light, that every pass of it must take far shorter steps than a road vehicle asks for: a digit too many in
/// a table shows here before a computation is begun that has no end. Limits: common practice, no source.
/// </summary>
internal static class StepSlips
{
    // Road vehicles force 0.1 to 0.6 ms. Below the first of these no pass is run, s; below the second it takes a hundred times as long as it should.
    private const double Least = 1e-6;
    private const double Usual = 1e-5;
    private static readonly string[] Ends = ["front", "rear"];

    /// <summary>Refuses, or warns of, what forces the shortest step.</summary>
    /// <param name="models">The car empty, then under each of its loads.</param>
    /// <param name="root">The file.</param>
    /// <param name="reader">Receives it.</param>
    /// <returns>Whether the car can be driven.</returns>
    public static bool Check(IReadOnlyList<RideModel> models, Node root, Reader reader)
    {
        var limit = models.Select(StepLimit.Of).MinBy(l => l.Step)!;
        if (limit.Step >= Usual)
        {
            return true;
        }

        var at = Blamed(models[0].Car, limit, root);
        var message = FormattableString.Invariant(
            $"{limit.Words} forces steps of {In.Microseconds.Of(limit.Step):G3} µs on every pass; road vehicles take 100 µs and above.");
        const string Advice = "Likely slip: a digit too many, or another unit.";
        if (limit.Step < Least)
        {
            reader.Refuse(at.Place, message, Advice);
            return false;
        }

        reader.Warn(at.Place, message, Advice);
        return true;
    }

    private static Node Blamed(Car car, StepLimit limit, Node root)
    {
        var end = root.At(Ends[(int)limit.End]);
        return limit.Cause switch
        {
            StepCause.Damper => end?.At("damper") is { } damper ? Row(car.Axles[(int)limit.End].Damper.Law, damper) : null,
            StepCause.TyreDamping => end?.At("tyre", "damping"),
            StepCause.TyreRate => end?.At("tyre", "rate"),
            StepCause.Friction => end?.At("friction"),
            StepCause.Spring => end?.At("bought-spring") ?? end?.At("spring"),
            StepCause.AntiRollBar => end?.At("anti-roll-bar"),
            StepCause.BumpStop => end?.At("bump-stop"),
            StepCause.ReboundStop => end?.At("rebound-stop"),
            StepCause.Interconnection => root.At("interconnection"),
            _ => end?.At("unsprung-mass"),
        } ?? end ?? root;
    }

    // The row at the upper end of the steepest piece.
    private static Node Row(DamperLaw law, Node damper)
    {
        if (law is not TableDamper table)
        {
            return damper;
        }

        var (side, piece, _) = new[] { ("bump", table.Bump), ("rebound", table.Rebound) }
            .SelectMany(side => DamperSlips.Slopes(side.Item2).Select((slope, k) => (Side: side.Item1, Piece: k, Slope: slope)))
            .MaxBy(p => p.Slope);
        return DamperSlips.Row(damper, side, side == "bump" ? table.Bump : table.Rebound, piece);
    }
}
