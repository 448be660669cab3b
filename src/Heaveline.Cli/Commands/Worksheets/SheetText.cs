using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>A worked sheet on its way out: values beside their doubts, notes, lines for a car file.</summary>
internal sealed class SheetText(string name, string title)
{
    private readonly FactTable table = new(title, ["value", "±"]);
    private readonly List<string> lines = [];

    /// <summary>Adds an amount in a unit.</summary>
    public SheetText Add<T>(string key, string label, string unit, string format, Amount<T> amount)
        where T : struct, IDimension
    {
        var own = unit.Length > 0 ? Units.Of<T>(unit) : null;
        double Shown(double si) => own?.FromSi(si) ?? si;
        table.Add(key, label, own is null ? "–" : unit, format, [Shown(amount.Si), amount.Doubt.IsStated ? Shown(amount.Doubt.HalfWidth) : null]);
        return this;
    }

    /// <summary>An amount as a car file takes it: the doubt to two digits, the value to the doubt's last place.</summary>
    public static string Amount<T>(Amount<T> amount, string unit)
        where T : struct, IDimension
    {
        var own = Units.Of<T>(unit);
        var (value, doubt) = (own.FromSi(amount.Si), own.FromSi(amount.Doubt.HalfWidth));
        var places = doubt > 0.0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(doubt)), 0, 9) : 4;
        var format = doubt > 0.0 ? $"F{places}" : "0.####";
        var text = $"{value.ToString(format, CultureInfo.InvariantCulture)} {unit}";
        return doubt > 0.0 ? $"{text} ± {doubt.ToString(format, CultureInfo.InvariantCulture)}" : text;
    }

    /// <summary>Adds a number without a doubt.</summary>
    public SheetText Add(string key, string label, string unit, string format, double? value)
    {
        table.Add(key, label, unit, format, [value, null]);
        return this;
    }

    /// <summary>Adds lines for a car file.</summary>
    public SheetText Paste(params ReadOnlySpan<string> yaml)
    {
        lines.AddRange(yaml);
        return this;
    }

    /// <summary>Writes all of it.</summary>
    public int Write(Streams streams, IReadOnlyList<string> notes, bool json)
    {
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("worksheet", [table], new JsonObject { ["sheet"] = name, ["notes"] = FactJson.Texts(notes), ["car-file"] = FactJson.Texts(lines) }));
            return ExitCode.Done;
        }

        streams.Results.Write(FactText.Of(table));
        streams.Results.WriteLine();
        foreach (var note in notes)
        {
            streams.Results.WriteLine(note);
        }

        if (lines.Count > 0)
        {
            streams.Results.WriteLine();
            streams.Results.WriteLine("For the car file:");
            foreach (var line in lines)
            {
                streams.Results.WriteLine("  " + line);
            }
        }

        return ExitCode.Done;
    }
}
