using Heaveline.Cars;

namespace Heaveline.Models;

internal sealed partial class CornerLaws
{
    private void SetStops(Axle axle, int i)
    {
        if (axle.BumpStop is { } bump)
        {
            SetStop(bump, i, +1.0);
            BumpTouch[i] = bump.Clearance.Si;
            BumpLimit[i] = Math.Min(BumpLimit[i], bump.Clearance.Si + (bump.SolidAfter?.Si ?? double.PositiveInfinity));
        }

        if (axle.ReboundStop is { } rebound)
        {
            SetStop(rebound, i, -1.0);
            ReboundTouch[i] = -rebound.Clearance.Si;
            ReboundLimit[i] = -rebound.Clearance.Si - (rebound.SolidAfter?.Si ?? double.PositiveInfinity);
        }
    }

    // side +1: bump, touched when S > clearance; −1: rebound, touched when S < −clearance. A mirrored stop has mirrored force.
    private void SetStop(Stop stop, int i, double side)
    {
        var clearance = stop.Clearance.Si;
        if (stop.Table is null && stop.Exponent.Si != 1.0)
        {
            Needs |= Needs.CurvedStop;
            var curved = side > 0.0 ? CurvedBump : CurvedRebound;
            curved[0][i] = clearance;
            // F = C·pᵉ with the stated rate as the secant at 10 mm.
            curved[1][i] = PerHalf * stop.Rate!.Value.Si * Math.Pow(0.010, 1.0 - stop.Exponent.Si);
            curved[2][i] = stop.Exponent.Si;
            return;
        }

        double[] at;
        double[] bends;
        if (stop.Table is { } table)
        {
            at = [.. table.At.Take(table.At.Count - 1).Select(x => side * (clearance + x))];
            bends = [.. Enumerable.Range(0, table.At.Count - 1).Select(j => PerHalf * (table.Slope(j) - (j > 0 ? table.Slope(j - 1) : 0.0)))];
        }
        else
        {
            at = [side * clearance];
            bends = [PerHalf * stop.Rate!.Value.Si];
        }

        (side > 0.0 ? BumpHinges : ReboundHinges).Set(i, at, bends);
        StopConstant[i] -= at.Select((c, j) => bends[j] * c).Sum();
    }
}
