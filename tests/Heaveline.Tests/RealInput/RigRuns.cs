using System.Globalization;
using Heaveline.Cars;

namespace Heaveline.Tests.RealInput;

/// <summary>
/// A magnetorheological damper driven by sines in a rig, 100 Hz (A. N. Vargas, doi 10.5281/zenodo.4445334, 2021, MIT licence). Closing positive: the
/// gas force, which pushes the rod out, is a positive mean.
/// </summary>
internal static class RigRuns
{
    /// <summary>Time (s), displacement (m), velocity (m/s), force (N) of a run.</summary>
    internal static (double[] Time, double[] Displacement, double[] Velocity, double[] Force) Of(string run)
    {
        double[][] rows = [.. File.ReadLines(SharedData.Require("mr-damper-rig-a", run + ".csv")).Skip(1)
            .Select(line => Array.ConvertAll(line.Split(','), cell => double.Parse(cell, CultureInfo.InvariantCulture)))];
        double[] Column(int i, double unit) => [.. rows.Select(row => row[i] * unit)];
        return (Column(0, 1.0), Column(1, 1e-3), Column(2, 1e-3), Column(3, 1.0));
    }

    /// <summary>The table of a run.</summary>
    internal static RigTable Table(string run)
    {
        var (time, _, velocity, force) = Of(run);
        return DamperRig.TableFrom(velocity, force, (time[^1] - time[0]) / (time.Length - 1));
    }
}
