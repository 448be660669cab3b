using System.Globalization;
using Heaveline.Cli.Output;
using Heaveline.Doubts;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Intervals of what cars do on a random road, and of what lies between them, from the same draws.</summary>
internal static class RideDoubts
{
    /// <summary>The tables, a set a speed, and how they came about.</summary>
    public static (IReadOnlyList<FactTable> Tables, string Words) Of(
        Streams streams, IReadOnlyList<(string Name, IReadOnlyList<RandomResponse> Responses)> cars, RoadSpectrum spectrum, int samples, ulong seed, CancellationToken stop)
    {
        CarDoubts[] doubts = [.. cars.Select(c => c.Responses[0].Model).Select(m => CarDoubts.Of(m.Car, m.Load))];
        string[] names = [.. cars.Select(c => c.Name)];
        var rows = RideTable.Rows(doubts[0].Car);
        var tables = new List<FactTable>();
        var words = "";
        double[] speeds = [.. cars[0].Responses.Select(r => r.Speed)];
        using var progress = new Progress(streams, "draws", samples);
        foreach (var (k, speed) in speeds.Index())
        {
            var study = JointStudy.OfRides(
                doubts, spectrum, speed, [.. rows.Select(r => r.Measure)], samples, seed, degree: Environment.ProcessorCount, progress: progress.Part(k, speeds.Length), cancellation: stop);
            tables.AddRange(DoubtTables.Of(string.Create(CultureInfo.InvariantCulture, $"At {3.6 * speed:F0} km/h"), names, [.. rows.Select(r => r.Row)], study));
            words = DoubtTables.Words(study, cars.Count > 1);
        }

        return (tables, words);
    }
}
