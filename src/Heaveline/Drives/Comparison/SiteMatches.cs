using System.Collections.Immutable;
using Heaveline.Drives.Events;

namespace Heaveline.Drives.Comparison;

/// <summary>The bumps that two drives have in common.</summary>
public sealed record SiteMatches
{
    // Kinds that a detector takes for each other, and lengths apart by more than this factor, are other bumps.
    private const double MostLengths = 2.0;

    /// <summary>The bumps, in the order of the drive before.</summary>
    public required ImmutableArray<SiteMatch> All { get; init; }

    /// <summary>Sites of the drive before with passes that count, but without a match.</summary>
    public required ImmutableArray<DriveSite> OnlyBefore { get; init; }

    /// <summary>Likewise of the drive after.</summary>
    public required ImmutableArray<DriveSite> OnlyAfter { get; init; }

    /// <summary>
    /// Finds them: first sites that the user gave one name in both drives; then those that lie on one place, the nearest first; then, of the others
    /// that were crossed twice at least, those pairs in the same order, of one kind and lengths within a factor of two, that hold most passes
    /// together.
    /// </summary>
    /// <param name="before">The drive before.</param>
    /// <param name="after">The drive after.</param>
    public static SiteMatches Of(DriveEvents before, DriveEvents after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        DriveSite[] first = [.. before.Sites.Where(s => s.Kept > 0)], second = [.. after.Sites.Where(s => s.Kept > 0)];
        var (mine, yours) = (Given(before), Given(after));
        List<(int Before, int After, SiteBasis Basis)> pairs =
        [
            .. from b in Enumerable.Range(0, first.Length)
               where mine.Contains(first[b].Name) && yours.Contains(first[b].Name)
               let a = Array.FindIndex(second, s => s.Name == first[b].Name)
               where a >= 0
               select (b, a, SiteBasis.Name),
        ];
        // A name that the user gave in both drives is matched by name or not at all.
        pairs.AddRange(OnOnePlace(
            first, second, [.. Rest(first, pairs.Select(p => p.Before), mine, yours)], [.. Rest(second, pairs.Select(p => p.After), mine, yours)]));
        int[] restBefore = [.. Rest(first, pairs.Select(p => p.Before), mine, yours)],
            restAfter = [.. Rest(second, pairs.Select(p => p.After), mine, yours)];
        pairs.AddRange(InOrder([.. restBefore.Select(i => first[i])], [.. restAfter.Select(i => second[i])])
            .Select(p => (restBefore[p.Before], restAfter[p.After], SiteBasis.Order)));
        var taken = new HashSet<string>();
        return new SiteMatches
        {
            All =
            [
                .. pairs.OrderBy(p => p.Before).Select(p => new SiteMatch(
                    Free(
                        !mine.Contains(first[p.Before].Name) && yours.Contains(second[p.After].Name) ? second[p.After].Name : first[p.Before].Name,
                        taken),
                    first[p.Before],
                    second[p.After],
                    p.Basis)),
            ],
            OnlyBefore = [.. first.Where((_, i) => pairs.All(p => p.Before != i))],
            OnlyAfter = [.. second.Where((_, i) => pairs.All(p => p.After != i))],
        };
    }

    /// <summary>
    /// The passes that count over these bumps with one of their numbers; those without the number, or without a speed, are left out.
    /// </summary>
    /// <param name="number">Which number.</param>
    public ImmutableArray<ComparedPass> Passes(ComparedNumber number) =>
    [
        .. from match in All
           from side in new[] { (Site: match.Before, IsAfter: false), (Site: match.After, IsAfter: true) }
           from e in side.Site.Events
           where e.IsKept && e.Speed > 0.0 && double.IsFinite(e.Speed)
           let value = e.Numbers.For(ComparedMeasure.Of(number).Key)?.Value ?? double.NaN
           where value > 0.0 && double.IsFinite(value)
           select new ComparedPass
           {
               Site = match.Name, Kind = match.Before.Kind.ToString(), Speed = e.Speed, Value = value, IsAfter = side.IsAfter, Number = e.Number,
           },
    ];

    private static IEnumerable<(int Before, int After, SiteBasis Basis)> OnOnePlace(
        DriveSite[] before, DriveSite[] after, IReadOnlyList<int> restBefore, IReadOnlyList<int> restAfter)
    {
        var (mine, yours) = (new HashSet<int>(), new HashSet<int>());
        var near = from b in restBefore
                   from a in restAfter
                   where before[b].Place is { } here && after[a].Place is { } there && here.IsSame(there)
                   orderby before[b].Place!.Value.DistanceTo(after[a].Place!.Value)
                   select (b, a);
        foreach (var (b, a) in near)
        {
            if (!mine.Contains(b) && !yours.Contains(a))
            {
                mine.Add(b);
                yours.Add(a);
                yield return (b, a, SiteBasis.Position);
            }
        }
    }

    private static HashSet<string> Given(DriveEvents events) => [.. events.Settings.Sites.Select(s => s.Site)];

    private static IEnumerable<int> Rest(DriveSite[] sites, IEnumerable<int> matched, HashSet<string> mine, HashSet<string> yours)
    {
        var done = matched.ToHashSet();
        return Enumerable.Range(0, sites.Length).Where(i => !done.Contains(i) && !(mine.Contains(sites[i].Name) && yours.Contains(sites[i].Name)));
    }

    private static string Free(string name, HashSet<string> taken)
    {
        var free = name;
        for (var k = 2; !taken.Add(free); k++)
        {
            free = FormattableString.Invariant($"{name} ({k})");
        }

        return free;
    }

    // The pairs in order whose passes together are most, by the longest-common-subsequence recursion with weights.
    private static IEnumerable<(int Before, int After)> InOrder(DriveSite[] before, DriveSite[] after)
    {
        var best = new double[before.Length + 1, after.Length + 1];
        for (var b = before.Length - 1; b >= 0; b--)
        {
            for (var a = after.Length - 1; a >= 0; a--)
            {
                best[b, a] = Math.Max(Math.Max(best[b + 1, a], best[b, a + 1]), Likeness(before[b], after[a]) + best[b + 1, a + 1]);
            }
        }

        for (int b = 0, a = 0; b < before.Length && a < after.Length;)
        {
            var likeness = Likeness(before[b], after[a]);
            if (likeness > 0.0 && best[b, a] == likeness + best[b + 1, a + 1])
            {
                yield return (b++, a++);
            }
            else if (best[b, a] == best[b + 1, a])
            {
                b++;
            }
            else
            {
                a++;
            }
        }
    }

    private static double Likeness(DriveSite before, DriveSite after)
    {
        var apart = Math.Abs(Math.Log(before.Length / after.Length)) / Math.Log(MostLengths);
        // Whose places are known and are not one are two bumps, however alike.
        return (before.Place is not null && after.Place is not null) || before.Kind != after.Kind || Math.Min(before.Kept, after.Kept) < 2 ? 0.0
            : !double.IsFinite(apart) ? 0.5 * Math.Min(before.Kept, after.Kept)
            : apart >= 1.0 ? 0.0
            : (1.0 - (0.5 * apart)) * Math.Min(before.Kept, after.Kept);
    }
}
