using System.Globalization;
using Heaveline.Measures.Comfort;

namespace Heaveline.Tests.RealInput;

/// <summary>Columns of a measured drive: numbers under a line of names, the first column the time in seconds.</summary>
internal sealed class DriveColumns
{
    private readonly string[] names;
    private readonly double[][] rows;

    private DriveColumns(string[] names, double[][] rows) => (this.names, this.rows) = (names, rows);

    /// <summary>A file of a drive; skips the running test, by name, when it is absent.</summary>
    internal static DriveColumns Of(string drive, string file)
    {
        var lines = File.ReadAllLines(SharedData.Require(drive, file));
        return new(
            lines[0].Split(','),
            [.. lines.Skip(1).Select(line => Array.ConvertAll(line.Split(','), cell => double.Parse(cell, CultureInfo.InvariantCulture)))]);
    }

    /// <summary>A column by its name.</summary>
    internal double[] this[string name]
    {
        get
        {
            var at = Array.IndexOf(names, name);
            return [.. rows.Select(row => row[at])];
        }
    }

    /// <summary>A column less its mean, at the mean rate of the time stamps, which must be even.</summary>
    internal SampledAcceleration LessMean(string name, double sign = 1.0)
    {
        var values = this[name];
        var mean = values.Average();
        return SampledAcceleration.From(this[names[0]], [.. values.Select(value => sign * (value - mean))]);
    }

    /// <summary>The same joined by straight lines and read at another rate.</summary>
    internal SampledAcceleration ReadAlongLines(string name, double rate)
    {
        var (times, values) = (this[names[0]], LessMean(name).Values.ToArray());
        var read = new List<double>();
        var i = 0;
        for (var t = times[0]; t < times[^1]; t = times[0] + (read.Count / rate))
        {
            while (times[i + 1] <= t)
            {
                i++;
            }

            read.Add(values[i] + ((values[i + 1] - values[i]) * (t - times[i]) / (times[i + 1] - times[i])));
        }

        return SampledAcceleration.Of([.. read], rate);
    }
}
