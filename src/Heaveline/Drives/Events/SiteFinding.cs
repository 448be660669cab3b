namespace Heaveline.Drives.Events;

/// <summary>
/// Which bumps lie on one place of the road: by their positions where both have one, else by the distance between them where the same round is driven
/// again, else by how the car moved over them.
/// </summary>
/// <remarks>
/// Two bumps are alike where, at speeds within 12 %, vertical speed and pitch rate from half a second before first touch to two and a half after
/// agree by a correlation of 0.9 with sizes within 30 %, shifted by up to 0.25 s; at other speeds where length and height of the bumps they look like
/// are within a factor of 1.5. A round is a distance that many alike pairs lie apart, within 15 m and 1 %. Proposals of this program.
/// </remarks>
internal sealed class SiteFinding(Drive drive, MotionCurves curves, List<Sighting> sightings, double[] cars, EventSettings settings)
{
    private const double Like = 0.9;
    private const double Unlike = 0.5;
    private const double Clear = 0.7;
    private const double LikeSize = 0.3;
    private const double LikeSpeed = 0.12;
    private const double LikeLength = 1.5;
    private const double LikeHeight = 1.35;
    private const double LengthKnown = 0.5;
    private const double LengthKnownTo = 1.2;
    private const double Metres = 15.0;
    private const double Share = 0.01;
    private const double Near = 1.0;

    private const double MostChance = 0.35;
    private const double Met = 0.8;

    // No round is shorter, m: what lies nearer may lie anywhere within its tolerance.
    private const double Shortest = 200.0;

    // From so much alikeness on two may be one where the distance says so too, and are one where it says nothing.
    private const double Possible = 0.2;
    private const double Probable = 0.5;

    // A position goes before all that likeness and odometer say; of several places in reach the nearest, likeness a little beside it.
    private const double Placed = 10.0;
    private const double Half = 0.5;

    private readonly double[][] traces = [.. sightings.Select(s => Trace(drive, curves, s.Onset.Time))];

    private readonly SitePlaces places = new(sightings);

    private readonly double[][] shapes = [.. sightings.Select(s => s.Table.OfShapes(cars))];

    /// <summary>The names of the sites; each bump then knows the place of its own.</summary>
    public IReadOnlyList<string> Found()
    {
        var n = sightings.Count;
        var alike = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                alike[i, j] = alike[j, i] = Alikeness(i, j);
            }
        }

        var round = Round(alike);
        var sites = new List<List<int>>();
        for (var i = 0; i < n; i++)
        {
            // The site that agrees best with all of its own, so that a chain of small differences joins nothing.
            var (best, at) = (0.0, -1);
            var isOnRound = round is { } length && Enumerable.Range(0, n).Any(j => j != i && alike[i, j] >= Possible && IsRoundApart(i, j, length));
            foreach (var (k, site) in sites.Index())
            {
                if (places.Closeness(i, site) is { } near)
                {
                    var there = Placed + near + (Half * site.Average(j => alike[i, j]));
                    (best, at) = near > 0.0 && there > best ? (there, k) : (best, at);
                    continue;
                }

                var isRound = round is { } lap && site.Exists(j => IsRoundApart(i, j, lap));
                var mean = site.Average(j => alike[i, j]);
                var score = mean + (isRound ? 1.0 : 0.0);
                if (mean >= (isRound ? Possible : Probable) && (!isOnRound || isRound) && score > best)
                {
                    (best, at) = (score, k);
                }
            }

            if (at >= 0)
            {
                sites[at].Add(i);
            }
            else
            {
                sites.Add([i]);
            }
        }

        return Named(sites);
    }

    // 1 where two bumps are alike, 0 where they are not, between where it is open.
    private double Alikeness(int i, int j)
    {
        var (a, b) = (sightings[i], sightings[j]);
        if (Math.Sign(a.Height) != Math.Sign(b.Height))
        {
            return 0.0;
        }

        // By the bumps that they look like: lengths as far as they are known, heights by a shape that both may have.
        var lengths = Math.Abs(Math.Log(a.Length.Value / b.Length.Value)) - (a.Length.Spread / a.Length.Value) - (b.Length.Spread / b.Length.Value);
        var (ofA, ofB) = (shapes[i], shapes[j]);
        var heights = Math.Abs(Math.Log(a.Table.HeightBy(cars, ofB) / b.Table.HeightBy(cars, ofA)));
        var off = Math.Max(lengths / Math.Log(LikeLength), double.IsNaN(heights) ? double.PositiveInfinity : heights / Math.Log(LikeHeight));
        // Of which no length is known may be anything.
        var isKnown = IsKnown(a) && IsKnown(b);
        var byShape = !isKnown ? 0.0 : off <= 1.0 ? 0.7 : Math.Clamp(1.4 - (0.7 * off), 0.0, 0.7);
        if (Math.Abs(Math.Log(a.Speed.Value / b.Speed.Value)) > LikeSpeed)
        {
            return byShape;
        }

        // Two drives over a low bump on a rough road agree no better than each agrees with a bump at all.
        var told = Math.Min(1.0, Math.Sqrt(a.Table.Explained * b.Table.Explained) / Clear);
        var (correlation, size) = Correlation(traces[i], traces[j], (int)Math.Round(0.25 * drive.Rate));
        var byMotion = Math.Abs(Math.Log(size)) <= LikeSize ? Math.Clamp(((correlation / told) - Unlike) / (Like - Unlike), 0.0, 1.0) : 0.0;
        return isKnown ? 0.5 * (byShape + byMotion) : byMotion;
    }

    // To half of itself, or to a metre or so.
    private static bool IsKnown(Sighting s) => s.Length.Spread <= Math.Max(LengthKnown * s.Length.Value, LengthKnownTo);

    // The length of the round that is driven again and again, m; null where there is none.
    private double? Round(double[,] alike)
    {
        var n = sightings.Count;
        if (drive.Speed.IsEmpty || n < 6)
        {
            return null;
        }

        var apart = new List<double>();
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (alike[i, j] >= Probable)
                {
                    apart.Add(sightings[i].Distance - sightings[j].Distance);
                }
            }
        }

        // Where bumps lie so near that one in three or more is met by chance, distance tells nothing.
        var span = sightings[^1].Distance - sightings[0].Distance;
        if (!(4.0 * n * (Metres + (Share * Shortest)) < MostChance * span))
        {
            return null;
        }

        // The round by which most pairs of bumps are one, two or three rounds apart, and nearly every bump has another so.
        var (best, round) = (0, 0.0);
        foreach (var candidate in apart.Where(d => d > Shortest).Order())
        {
            var pairs = 0;
            var met = new bool[n];
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    if (alike[i, j] >= Possible && IsRoundApart(i, j, candidate))
                    {
                        pairs++;
                        (met[i], met[j]) = (true, true);
                    }
                }
            }

            if (met.Count(m => m) >= Math.Ceiling(Met * n) && pairs > best)
            {
                (best, round) = (pairs, candidate);
            }
        }

        return best > 0 ? round : null;
    }

    private bool IsApart(int i, int j, double distance) =>
        Math.Abs(Math.Abs(sightings[i].Distance - sightings[j].Distance) - distance) <= Metres + (Share * distance);

    private bool IsRoundApart(int i, int j, double round)
    {
        var apart = Math.Abs(sightings[i].Distance - sightings[j].Distance);
        var rounds = Math.Max(1.0, Math.Round(apart / round));
        return rounds <= 3.0 && IsApart(i, j, rounds * round);
    }

    private static double[] Trace(Drive drive, MotionCurves curves, double onset)
    {
        var (before, after) = ((int)Math.Round(0.5 * drive.Rate), (int)Math.Round(2.5 * drive.Rate));
        var at = (int)Math.Round((onset - drive.Start) * drive.Rate);
        var half = before + after;
        // Heave and pitch rate, one behind the other; heave as long as a metre of pitching arm.
        var result = new double[2 * half];
        for (var i = 0; i < half; i++)
        {
            var k = at - before + i;
            if (k > 0 && k < curves.Heave.Length)
            {
                result[i] = drive.Rate * (curves.Heave[k] - curves.Heave[k - 1]);
                result[half + i] = curves.Pitch.Length > 0 ? drive.Rate * (curves.Pitch[k] - curves.Pitch[k - 1]) : 0.0;
            }
        }

        return result;
    }

    private static (double Correlation, double Size) Correlation(double[] a, double[] b, int reach)
    {
        var half = a.Length / 2;
        var (best, size) = (-1.0, 1.0);
        for (var lag = -reach; lag <= reach; lag++)
        {
            var (ab, aa, bb) = (0.0, 0.0, 0.0);
            for (var channel = 0; channel < 2; channel++)
            {
                for (var i = Math.Max(0, lag); i < half + Math.Min(0, lag); i++)
                {
                    var (x, y) = (a[(channel * half) + i], b[(channel * half) + i - lag]);
                    ab += x * y;
                    aa += x * x;
                    bb += y * y;
                }
            }

            if (aa > 0.0 && bb > 0.0 && ab / Math.Sqrt(aa * bb) > best)
            {
                (best, size) = (ab / Math.Sqrt(aa * bb), Math.Sqrt(aa / bb));
            }
        }

        return (best, size);
    }

    // The user's names: one name at several sites joins them, several at one site part it.
    private List<string> Named(List<List<int>> sites)
    {
        var said = new string?[sightings.Count];
        foreach (var (name, at) in settings.Sites)
        {
            var nearest = Enumerable.Range(0, sightings.Count)
                .Where(i => at > sightings[i].Onset.Time - Near && at < Math.Max(sightings[i].Through, sightings[i].Candidate.Seen) + Near)
                .OrderBy(i => Math.Abs(sightings[i].Candidate.Seen - at))
                .FirstOrDefault(-1);
            if (nearest >= 0)
            {
                said[nearest] = name;
            }
        }

        var names = new List<string>();
        var number = 0;
        foreach (var site in sites)
        {
            string[] own = [.. site.Select(i => said[i]).OfType<string>().Distinct()];
            var plain = own.Length == 1 ? own[0] : null;
            foreach (var i in site)
            {
                var name = said[i] ?? (plain ??= NextName());
                sightings[i].Site = names.IndexOf(name);
                if (sightings[i].Site < 0)
                {
                    sightings[i].Site = names.Count;
                    names.Add(name);
                }
            }
        }

        return names;

        string NextName()
        {
            string name;
            do
            {
                number++;
                name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"site {number}");
            }
            while (said.Contains(name));
            return name;
        }
    }
}
