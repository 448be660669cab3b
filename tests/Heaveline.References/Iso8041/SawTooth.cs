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
        var start = cycles == "cont" ? 0.0 : first;
        var values = new double[(int)(length * rate)];
        for (var i = 0; i < values.Length; i++)
        {
            // The mean over one step: a sample taken at a point beside the vertical fall would shift the fall by up to a step.
            values[i] = rate * (Integral((i + 0.5) / rate) - Integral((i - 0.5) / rate));
        }

        return SampledAcceleration.Of(values, rate);

        double Integral(double t)
        {
            if (t < start)
            {
                return 0.0;
            }

            var since = (t - start) % (cycles == "cont" ? double.MaxValue : repeat);
            var phase = (since / period) + 0.5;
            var q = phase - Math.Floor(phase);
            return since < burst ? period * ((q * q) - q + 0.25) : 0.0;
        }
    }
}
