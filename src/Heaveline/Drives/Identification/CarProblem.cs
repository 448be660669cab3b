namespace Heaveline.Drives.Identification;

/// <summary>Windows of a drive and what is known of the car, as a likelihood.</summary>
internal sealed class CarProblem
{
    /// <summary>Of the sampling rate, the highest frequency read: below the corner of the filter that brought the log to its grid.</summary>
    public const double BandShare = 0.24;

    /// <summary>How long a hump is that nobody measured, m.</summary>
    public const double UsualHump = 3.7;

    private CarProblem(
        IReadOnlyList<DriveWindow> windows, IdentificationKnown known, string[] sites, IReadOnlyList<HumpSplines> splines)
    {
        (Windows, Known, Sites) = (windows, known, sites);
        var grids = new Dictionary<(int, double), SpectralGrid>();
        var spectra = windows.Select(w =>
        {
            var key = (w.Vertical.Length, w.Rate);
            if (!grids.TryGetValue(key, out var grid))
            {
                grids[key] = grid = new SpectralGrid(w.Vertical.Length, w.Rate, Math.Min(known.Band, BandShare * w.Rate));
            }

            var hump = w.Site is { } site ? Array.IndexOf(sites, site) : -1;
            return new WindowSpectrum(grid, w, w.Speed, hump, Drawn(hump < 0 ? null : splines[hump], w.Speed));
        }).ToArray();
        Likelihood = new CarLikelihood(spectra, splines, known, [.. windows.Select(w => (w.SpeedSpread, w.BeforeSpread))]);
    }

    /// <summary>The windows, those of humps before those of rough road.</summary>
    public IReadOnlyList<DriveWindow> Windows { get; }

    /// <summary>What is known before.</summary>
    public IdentificationKnown Known { get; }

    /// <summary>Names of the humps.</summary>
    public string[] Sites { get; }

    /// <summary>The likelihood.</summary>
    public CarLikelihood Likelihood { get; }

    /// <summary>The problem of windows.</summary>
    /// <param name="windows">One or more.</param>
    /// <param name="known">What is known.</param>
    public static CarProblem Of(IReadOnlyList<DriveWindow> windows, IdentificationKnown known)
    {
        string[] sites = [.. windows.Select(w => w.Site).OfType<string>().Distinct().Order(StringComparer.Ordinal)];
        return new CarProblem(windows, known, sites, [.. sites.Select(s => new HumpSplines(
            known.HumpLengths.GetValueOrDefault(s, UsualHump),
            windows.Where(w => w.Site == s).Min(w => w.Speed / Math.Min(known.Band, BandShare * w.Rate))))]);
    }

    /// <summary>The problem of some of its windows, with the same humps.</summary>
    public CarProblem Part(IReadOnlyList<int> numbers) => new([.. numbers.Select(i => Windows[i])], Known, Sites, Likelihood.Splines);

    /// <summary>Parameters to begin from near a car that was identified before: its humps by their heights, its passes by their events.</summary>
    /// <param name="former">That car.</param>
    public double[] From(CarFromDrive former)
    {
        var x = Likelihood.Centre.ToArray();
        if (former.Mean.IsEmpty)
        {
            return x;
        }

        former.Mean.AsSpan(0, CarParameter.Shared).CopyTo(x);
        foreach (var (site, at, splines, _) in former.Splines)
        {
            if (Array.IndexOf(Sites, site) is >= 0 and var h)
            {
                Likelihood.Splines[h].From(splines, former.Mean.AsSpan(at, splines.Count), x.AsSpan(Likelihood.HumpAt[h]));
            }
        }

        for (var w = 0; w < Windows.Count; w++)
        {
            if (Windows[w].Event > 0 && former.Crossed.IndexOf(Windows[w].Event) is >= 0 and var pass)
            {
                former.Mean.AsSpan(former.OwnAt + (CarParameter.Own * pass), CarParameter.Own)
                    .CopyTo(x.AsSpan(Likelihood.OwnAt + (CarParameter.Own * w)));
            }
        }

        return x;
    }

    /// <summary>Parameters of the whole as a part's own start from them.</summary>
    public static double[] Cut(CarProblem whole, double[] x, CarProblem part, IReadOnlyList<int> numbers)
    {
        var result = new double[part.Likelihood.Count];
        x.AsSpan(0, whole.Likelihood.OwnAt).CopyTo(result);
        for (var k = 0; k < numbers.Count; k++)
        {
            x.AsSpan(whole.Likelihood.OwnAt + (CarParameter.Own * numbers[k]), CarParameter.Own)
                .CopyTo(result.AsSpan(part.Likelihood.OwnAt + (CarParameter.Own * k)));
        }

        return result;
    }

    /// <summary>The highest frequency at which a hump's splines draw it at a speed, Hz: edges that they cannot draw would bias the wheels.</summary>
    public static double Drawn(HumpSplines? splines, double speed) =>
        splines is null ? double.PositiveInfinity : 0.5 * speed / splines.Spacing;
}
