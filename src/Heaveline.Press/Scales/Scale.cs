using Heaveline.Figures;

namespace Heaveline.Press.Scales;

/// <summary>From the values of an axis to places on the sheet.</summary>
/// <param name="Span">The values at the two ends.</param>
/// <param name="Start">Where the low end stands, points.</param>
/// <param name="End">Where the high end stands, points; less than the start on an axis that points up.</param>
/// <param name="Kind">How values are spaced.</param>
internal readonly record struct Scale(Span Span, double Start, double End, AxisScale Kind)
{
    /// <summary>The place of a value. What a logarithmic axis cannot show (zero and below) has no place: NaN.</summary>
    public double At(double value)
    {
        if (Kind == AxisScale.Linear)
        {
            return Start + (End - Start) * ((value - Span.Low) / (Span.High - Span.Low));
        }

        return value > 0.0 ? Start + (End - Start) * (Math.Log(value / Span.Low) / Math.Log(Span.High / Span.Low)) : double.NaN;
    }

    /// <summary>Whether a value lies on the axis, its ends included.</summary>
    public bool Shows(double value)
    {
        var grace = 1e-9 * Math.Max(Math.Abs(Span.Low), Math.Abs(Span.High));
        return value >= Span.Low - grace && value <= Span.High + grace;
    }
}
