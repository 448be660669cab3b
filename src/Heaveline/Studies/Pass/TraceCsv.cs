using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>All traces of a pass as CSV: one row a sample, the unit in the header.</summary>
public static class TraceCsv
{
    /// <summary>The traces of one pass.</summary>
    public static byte[] Of(Pass pass) => Written(Columns(pass), pass.Count);

    /// <summary>The traces of several cars over one road at one speed, each column under its car's name.</summary>
    public static byte[] Of(IReadOnlyList<(string Name, Pass Pass)> passes)
    {
        // Passes of one drive share their clock; the shortest record bounds the table.
        List<(string Header, ImmutableArray<double> Values)> columns = [("time [s]", passes[0].Pass.Time)];
        foreach (var (name, pass) in passes)
        {
            columns.AddRange(Columns(pass).Skip(1).Select(c => ($"{name}: {c.Header}", c.Values)));
        }

        return Written(columns, passes.Min(p => p.Pass.Count));
    }

    private static List<(string Header, ImmutableArray<double> Values)> Columns(Pass pass)
    {
        var columns = new List<(string Header, ImmutableArray<double> Values)>
        {
            ("time [s]", pass.Time),
            ("heave [mm]", Scaled(pass.Heave, 1e3)),
            ("pitch, nose-down [deg]", Scaled(pass.Pitch, In.Degrees.Factor)),
            ("pitch rate [deg/s]", Scaled(pass.PitchRate, In.Degrees.Factor)),
            ("pitch acceleration [rad/s2]", pass.PitchAcceleration),
            ("heave acceleration [m/s2]", pass.HeaveAcceleration),
            ("front height [mm]", Scaled(pass.FrontHeight, 1e3)),
            ("rear height [mm]", Scaled(pass.RearHeight, 1e3)),
        };
        if (pass.Model.Rolls)
        {
            columns.Add(("roll, right side down [deg]", Scaled(pass.Roll, In.Degrees.Factor)));
            columns.Add(("roll acceleration [rad/s2]", pass.RollAcceleration));
        }

        foreach (var i in pass.Model.Rolls ? [0, 1, 2, 3] : new[] { 0, 2 })
        {
            var wheel = CornerNames.Of(i, pass.Model.Rolls);
            columns.Add(($"{wheel} road [mm]", Scaled(pass.RoadHeight(i), 1e3)));
            columns.Add(($"{wheel} wheel height [mm]", Scaled(pass.WheelHeight(i), 1e3)));
            columns.Add(($"{wheel} travel, bump [mm]", Scaled(pass.Travel(i), 1e3)));
            columns.Add(($"{wheel} tyre load [N]", pass.TyreLoad(i)));
        }

        foreach (var seat in pass.Model.Car.Seats)
        {
            columns.Add(($"{seat.Name} vertical acceleration [m/s2]", pass.VerticalAcceleration(seat.BehindFrontAxle.Si, seat.LeftOfMiddle.Si)));
        }

        return columns;
    }

    private static byte[] Written(List<(string Header, ImmutableArray<double> Values)> columns, int count)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', columns.Select(c => CsvCell.Of(c.Header))).Append('\n');
        for (var k = 0; k < count; k++)
        {
            text.AppendJoin(',', columns.Select(c => c.Values[k].ToString("G9", CultureInfo.InvariantCulture))).Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static ImmutableArray<double> Scaled(ImmutableArray<double> values, double factor) => [.. values.Select(v => v * factor)];
}
