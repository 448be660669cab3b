using System.Globalization;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Figures;

/// <summary>A road as it is: heights of both tracks over distance, and their spectra with the classes' borders.</summary>
public static class RoadFigure
{
    private const int Points = 1500;

    /// <summary>The figure, page wide.</summary>
    /// <param name="road">The road.</param>
    /// <param name="left">Roughness of its left track.</param>
    /// <param name="right">Roughness of its right track; null when both wheels run in one.</param>
    public static Figure Of(Road road, RoadRoughness left, RoadRoughness? right)
    {
        ArgumentNullException.ThrowIfNull(road);
        ArgumentNullException.ThrowIfNull(left);
        var panels = new List<Panel> { Heights(road, right is not null) };
        if (left.Spectrum is not null && Shown(left.Spectrum).Count > 1)
        {
            panels.Add(Spectra(left, right));
        }

        return new Figure
        {
            Title = FirstLetter.Raised(road.Name),
            AltText = "Heights of the road over distance"
                + (left.Spectrum is null ? "" : ", and their spectral density against spatial frequency between the borders of the classes A to H")
                + $". {Words(left)}",
            Caption = $"{FirstLetter.Raised(road.Caption)}. {Words(left)}".Trim(),
            SignNote = left.Spectrum is null
                ? "Heights upwards."
                : "Heights upwards. Grey dotted lines: borders between the classes of ISO 8608 at waviness 2. Shaded: "
                    + "95 % interval of the left track's bands.",
            Size = FigureSize.Page,
            Panels = [.. panels],
        };
    }

    private static string Words(RoadRoughness track)
    {
        var parts = new List<string>();
        if (track.Fit is { } fit)
        {
            var (low, high) = fit.DensityInterval(0.95);
            parts.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{FirstLetter.Raised(fit.Class.ToString())}: {In.MillionthsOfCubicMetres.Of(fit.Density.Si):G3}e-6 m³ at 0.1 cycles/m (95 %: "
                + $"{In.MillionthsOfCubicMetres.Of(low.Si):G3} to {In.MillionthsOfCubicMetres.Of(high.Si):G3}), waviness {fit.Waviness:F2}."));
        }

        if (track.Index is { } index)
        {
            parts.Add(FormattableString.Invariant($"Roughness index {index.MetresPerKilometre:F2} m/km."));
        }

        parts.AddRange(track.Refused);
        return string.Join(" ", parts);
    }

    private static ChartPanel Heights(Road road, bool both)
    {
        var from = road.Start;
        var to = Math.Max(road.End, from + 1.0);
        double[] xs = [.. Enumerable.Range(0, Points).Select(k => from + ((to - from) * k / (Points - 1)))];
        Trace Track(string name, Profile profile, Pen pen) => Trace.From(name, xs, [.. xs.Select(x => In.Millimetres.Of(profile.Height(x)))], pen);
        return new ChartPanel
        {
            X = new Axis { Label = "distance", Unit = "m" },
            Y = new Axis { Label = "height", Unit = "mm" },
            Traces = both
                ? [
                    Track("right", road.Right, Pen.Of(Ink.Second) with { Width = 0.7 }),
                    Track("left", road.Left, Pen.Of(Ink.First) with { Width = 0.7 }),
                ]
                : [Track("", road.Left, Pen.Of(Ink.First) with { Width = 0.7 })],
        };
    }

    private static ChartPanel Spectra(RoadRoughness left, RoadRoughness? right)
    {
        Trace Curve(string name, ProfileSpectrum spectrum, Pen pen) => Trace.From(
            name, [.. Shown(spectrum).Select(b => b.Centre)], [.. Shown(spectrum).Select(b => b.Density)], pen);
        var bands = Shown(left.Spectrum!);
        var from = bands[0].Centre;
        var to = bands[^1].Centre;
        var traces = new List<Trace>();
        foreach (var border in RoadClass.All.Take(RoadClass.All.Count - 1))
        {
            double At(double n) => border.Upper.Si * Math.Pow(n / RoadSpectrum.Reference, -2.0);
            var low = bands.Min(b => b.Density);
            var high = bands.Max(b => b.Density);
            if (At(from) > low / 4.0 && At(to) < high * 4.0)
            {
                traces.Add(Trace.From(
                    $"{border.Letter}/{(char)(border.Letter + 1)}",
                    [from, to],
                    [At(from), At(to)],
                    Pen.Of(Ink.Fourth, Dash.Dotted) with { Width = 0.6 }) with
                {
                    Below = $"{border.Letter}",
                    Above = $"{(char)(border.Letter + 1)}",
                });
            }
        }

        if (left.Fit is { } fit)
        {
            traces.Add(Trace.From("fitted", [from, to], [Line(fit, from), Line(fit, to)], Pen.Of(Ink.Third, Dash.Dashed)));
        }

        if (right?.Spectrum is { } other)
        {
            traces.Add(Curve("right", other, Pen.Of(Ink.Second)));
        }

        traces.Add(Curve(right is null ? "" : "left", left.Spectrum!, Pen.Of(Ink.First)));
        return new ChartPanel
        {
            X = new Axis { Label = "spatial frequency", Unit = "cycles/m", Scale = AxisScale.Logarithmic },
            Y = new Axis { Label = "spectral density of heights", Unit = "m³", Scale = AxisScale.Logarithmic },
            Traces = [.. traces],
            Ribbons =
            [
                new Ribbon
                {
                    Xs = [.. bands.Select(b => b.Centre)],
                    Lows = [.. bands.Select(b => b.Interval(0.95).Low)],
                    Highs = [.. bands.Select(b => b.Interval(0.95).High)],
                },
            ],
        };
    }

    // Where a road's own band ends within one of these bands, the density falls off a cliff that is the band's, not the road's: the last bands are
    // left out while they lie below a tenth of what the one before them and a waviness of 2 ask for. Past that edge a made road's spectrum is
    // rounding.
    private static List<SpectrumBand> Shown(ProfileSpectrum spectrum)
    {
        List<SpectrumBand> bands =
            [.. spectrum.Bands.Where(b => b.Density > 1e-4 * RoadClass.A.Upper.Si * Math.Pow(b.Centre / RoadSpectrum.Reference, -2.0))];
        while (bands.Count > 2 && bands[^1].Density < 0.1 * bands[^2].Density * Math.Pow(bands[^1].Centre / bands[^2].Centre, -2.0))
        {
            bands.RemoveAt(bands.Count - 1);
        }

        return bands;
    }

    private static double Line(SpectrumFit fit, double n) => fit.Density.Si * Math.Pow(n / RoadSpectrum.Reference, -fit.Waviness);
}
