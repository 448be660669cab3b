using System.Globalization;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;

namespace Heaveline.Figures;

/// <summary>Spectra of one car's heave and pitch on a random road, with the wheelbase filter drawn in.</summary>
public static class RideSpectraFigure
{
    private const double From = 0.3;
    private const double To = 25.0;

    /// <summary>The figure, page wide.</summary>
    /// <param name="response">The response.</param>
    public static Figure Of(RandomResponse response)
    {
        ArgumentNullException.ThrowIfNull(response);
        var filter = new WheelbaseFilter { Wheelbase = response.Model.Car.Wheelbase, Speed = new Amount<Velocity>(response.Speed) };
        return new Figure
        {
            Title = FormattableString.Invariant(
                $"{response.Model.Car.Name} at {In.KilometresPerHour.Of(response.Speed):0.#} km/h: what the wheelbase lets through"),
            AltText = "Three charts against frequency: the gains of the wheelbase filter for heave and pitch, the spectral density of heave "
                + "acceleration, and that of pitch acceleration; dotted lines where the wheelbase cancels heave or pitch.",
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"{FirstLetter.Raised(response.Model.Load.Name)}; random road of "
                + $"{In.MillionthsOfCubicMetres.Of(response.Spectrum.Density.Si):G4}e-6 m³ at 0.1 cycles/m. "
                + $"The rear wheels meet the road {filter.Delay:F3} s after the front ones: heave is cancelled at odd, pitch at even multiples of "
                + $"{0.5 / filter.Delay:F2} Hz. RMS: heave {response.Rms(RideSignal.HeaveAcceleration):F2} m/s², "
                + $"pitch {response.Rms(RideSignal.PitchAcceleration):F2} rad/s²."),
            SignNote = "The filter is that of equal axles with the centre of gravity in the middle; a real car's minima are not quite empty.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "frequency", Unit = "Hz", Scale = AxisScale.Logarithmic, From = From, To = To },
            Panels =
            [
                Filter(filter),
                Density(response, RideSignal.HeaveAcceleration, "heave acceleration", "m²/s³", filter.HeaveNulls(To)),
                Density(response, RideSignal.PitchAcceleration, "pitch acceleration", "rad²/s³", filter.PitchNulls(To)),
            ],
        };
    }

    private static ChartPanel Filter(WheelbaseFilter filter)
    {
        double[] f = [.. Enumerable.Range(0, 400).Select(k => From * Math.Pow(To / From, k / 399.0))];
        return new ChartPanel
        {
            Y = new Axis { Label = "gain of the wheelbase", From = 0.0, To = 1.0 },
            Traces =
            [
                Trace.From("heave", f, [.. f.Select(filter.HeaveGain)], Pen.Of(Ink.First)),
                Trace.From("pitch", f, [.. f.Select(filter.PitchGain)], Pen.Of(Ink.Second, Dash.Dashed)),
            ],
        };
    }

    private static ChartPanel Density(RandomResponse response, RideSignal signal, string name, string unit, IReadOnlyList<double> nulls)
    {
        var density = response.Density(signal);
        var inside = Enumerable.Range(0, density.Count).Where(k => response.Frequencies[k] is >= From and <= To && density[k] > 0.0).ToArray();
        return new ChartPanel
        {
            Y = new Axis { Label = name, Unit = unit },
            Traces = [Trace.From("", [.. inside.Select(k => response.Frequencies[k])], [.. inside.Select(k => density[k])])],
            Limits = [.. nulls.Where(n => n >= From).Take(3)
                .Select((n, k) => new Limit { At = n, Label = FormattableString.Invariant($"null {k + 1}"), Direction = LimitDirection.AtX })],
        };
    }
}
