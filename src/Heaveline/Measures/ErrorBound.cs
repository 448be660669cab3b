using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>What a pass says of its own numerical error in words, the same wherever it is said.</summary>
internal static class ErrorBound
{
    /// <summary>
    /// The error in per cent, rounded up to 1, 2 or 5 times a power of ten, 0.001 at least: a bound has one digit at best, and the same one on every
    /// machine.
    /// </summary>
    /// <param name="share">The stated error (–).</param>
    public static string Percent(double share)
    {
        var percent = Math.Max(In.Percent.Of(share), 1e-3);
        var power = Math.Pow(10.0, Math.Floor(Math.Log10(percent)));
        var step = new[] { 1.0, 2.0, 5.0, 10.0 }.First(s => s * power >= percent * (1.0 - 1e-9));
        return (step * power).ToString("0.####", CultureInfo.InvariantCulture) + " %";
    }
}
