using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Press.Scales;

/// <summary>The range of values an axis shows, from low to high, in its unit.</summary>
internal readonly record struct Span(double Low, double High)
{
    /// <summary>The range of an axis: as given, else just holding the values.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="values">What is drawn against it; what is not finite is passed over.</param>
    /// <param name="rounded">Whether an end not given moves out to a whole step.</param>
    /// <param name="parts">Into how many steps the axis is to be split at most, when rounding.</param>
    /// <param name="room">Share of the range left free at an end not given, so that nothing stands on the axis itself.</param>
    /// <exception cref="RefusedValueException">A logarithmic axis meets a value of zero or below.</exception>
    public static Span Of(Axis axis, IEnumerable<double> values, bool rounded, int parts, double room = 0.0)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in values)
        {
            // On a logarithmic axis values at or below zero lie infinitely far down: they cannot set the range.
            if (double.IsFinite(value) && (axis.Scale == AxisScale.Linear || value > 0.0))
            {
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
            }
        }

        if (low > high)
        {
            (low, high) = axis.Scale == AxisScale.Linear ? (0.0, 1.0) : (1.0, 10.0);
        }

        if (axis.Scale == AxisScale.Linear)
        {
            (low, high) = (low - room * (high - low), high + room * (high - low));
        }
        else
        {
            (low, high) = (low * Math.Pow(low / high, room), high * Math.Pow(high / low, room));
        }

        return axis.Scale == AxisScale.Linear ? Linear(axis, low, high, rounded, parts) : Logarithmic(axis, low, high);
    }

    private static Span Linear(Axis axis, double low, double high, bool rounded, int parts)
    {
        (low, high) = (axis.From ?? Math.Min(low, axis.To ?? low), axis.To ?? Math.Max(high, axis.From ?? high));

        // A flat curve gets room above and below; a hair of a range (rounding noise on a constant) counts as flat.
        var least = 1e-9 * Math.Max(Math.Abs(low), Math.Abs(high));
        if (high - low <= least)
        {
            var room = low == 0.0 ? 1.0 : 0.1 * Math.Max(Math.Abs(low), Math.Abs(high));
            (low, high) = (axis.From ?? low - room, axis.To ?? high + room);
        }

        if (rounded && (axis.From is null || axis.To is null))
        {
            var whole = Ticks.Rounded(low, high, parts);
            (low, high) = (axis.From ?? whole.From, axis.To ?? whole.To);
        }

        return new Span(low, high);
    }

    private static Span Logarithmic(Axis axis, double low, double high)
    {
        (low, high) = (axis.From ?? low, axis.To ?? high);
        if (low <= 0.0)
        {
            throw new RefusedValueException(
                $"range of the axis '{axis.Label}'",
                $"{low:G6} to {high:G6}",
                "above 0 on a logarithmic axis",
                "Give a range above zero, or a linear axis.");
        }

        return low < high ? new Span(low, high) : new Span(axis.From ?? low / 2.0, axis.To ?? low * 2.0);
    }
}
