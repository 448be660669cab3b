using Heaveline.Drives.Identification;

namespace Heaveline.Figures;

/// <summary>Measured spectra of a drive's windows with those of the fitted car, and the power that is left by band.</summary>
public static class DriveFitFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="car">The car.</param>
    public static Figure Of(CarFromDrive car)
    {
        ArgumentNullException.ThrowIfNull(car);
        double[] frequencies = [.. car.Spectra.Select(s => s.Frequency)];
        ChartPanel Panel(string label, string unit, Func<FittedSpectrum, double> measured, Func<FittedSpectrum, double> model) => new()
        {
            Y = new Axis { Label = label, Unit = unit, Scale = AxisScale.Logarithmic },
            Traces =
            [
                Trace.From("measured", frequencies, [.. car.Spectra.Select(measured)], Pen.Of(Ink.First)),
                Trace.From("fitted car", frequencies, [.. car.Spectra.Select(model)], Pen.Of(Ink.Second, Dash.Dashed)),
            ],
        };
        ChartPanel left = new()
        {
            Y = new Axis { Label = "power left", Unit = "–", From = 0.0 },
            Traces =
            [
                Trace.From("left of vertical acceleration", Ends(car), Steps(car, r => r.Vertical), Pen.Of(Ink.First)),
                Trace.From("left of pitch rate", Ends(car), Steps(car, r => r.Pitch), Pen.Of(Ink.Third, Dash.Dotted)),
            ],
        };
        return new Figure
        {
            Title = "How the fitted car moves beside the log",
            AltText = "Charts against frequency: spectra of vertical acceleration and of pitch rate, measured and of the "
                + "fitted car, and the power left by band.",
            Caption = "Mean over the windows of the fit; a frequency that a hump's splines do not draw at the speed of a bump is left out for it. "
                + "Power left is that of the whitened residuals, 1 where the model holds; outside 0.5 to 1.8 the car is not believed.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "frequency", Unit = "Hz", Scale = AxisScale.Logarithmic, From = frequencies[0], To = frequencies[^1] },
            Panels =
            [
                Panel("vertical acceleration", "m²/s³", s => s.Vertical, s => s.VerticalModel),
                Panel("pitch rate", "rad²/s", s => s.Pitch, s => s.PitchModel), left,
            ],
        };
    }

    private static double[] Ends(CarFromDrive car) => [.. car.Residuals.SelectMany(r => new[] { r.From, r.To })];

    private static double[] Steps(CarFromDrive car, Func<ResidualBand, double> of) => [.. car.Residuals.SelectMany(r => new[] { of(r), of(r) })];
}
