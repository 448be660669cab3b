using Heaveline.Measures.Comfort;

namespace Heaveline.References.Iso8041;

/// <summary>The saw-tooth bursts of ISO 8041-1:2017; shape and times in source.md.</summary>
internal static class SawTooth
{
    public static SampledAcceleration WholeBody(string cycles) => Make(cycles, 100.0, 1.0, 10.0, 60.0, 5_000.0);

    public static SampledAcceleration LowFrequency(string cycles) => Make(cycles, 2.5, 40.0, 400.0, 2400.0, 200.0);

    private static SampledAcceleration Make(string cycles, double angular, double first, double repeat, double length, double rate)
    {
        var period = 2.0 * Math.PI / angular;
        var burst = cycles == "cont" ? length : double.Parse(cycles, System.Globalization.CultureInfo.InvariantCulture) * period;
        var values = new double[(int)(length * rate)];
        for (var i = 0; i < values.Length; i++)
        {
            var t = i / rate;
            var since = cycles == "cont" ? t : (t - first) - (repeat * Math.Floor((t - first) / repeat));
            if (since < burst && (cycles == "cont" || t >= first))
            {
                var phase = (since / period) + 0.5;
                values[i] = (2.0 * (phase - Math.Floor(phase))) - 1.0;
            }
        }

        return SampledAcceleration.Of(values, rate);
    }
}
