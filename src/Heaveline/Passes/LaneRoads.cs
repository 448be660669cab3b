using Heaveline.Numerics;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>The roads under the wheels of cars side by side. A track that several wheels or cars meet at the same time is read once.</summary>
internal sealed class LaneRoads<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly PassGroup group;
    private readonly List<(Profile Profile, double Behind, double Speed)> tracks = [];

    // Which track each lane meets, by corner.
    private readonly int[][] under = [new int[TLane.Count], new int[TLane.Count], new int[TLane.Count], new int[TLane.Count]];
    private readonly ProfileReader[] readers;
    private readonly bool sidesAlike;

    public LaneRoads(PassGroup group)
    {
        this.group = group;
        for (var lane = 0; lane < TLane.Count; lane++)
        {
            // Missing places repeat the last car.
            var k = Math.Min(lane, group.Requests.Length - 1);
            for (var corner = 0; corner < 4; corner++)
            {
                under[corner][lane] = Track(group.Roads[k][corner], group.Roads[k].Behind(corner), group.Requests[k].Speed);
            }
        }

        readers = [.. tracks.Select(t => t.Profile.Reader())];
        LanesAlike = under.All(lanes => lanes.All(track => track == lanes[0]));
        sidesAlike = under[0].SequenceEqual(under[1]) && under[2].SequenceEqual(under[3]);
        After = Each([.. tracks.Select(t => t.Profile.EndHeight - t.Profile.StartHeight)]);
    }

    /// <summary>Whether all cars meet the same heights at the same time.</summary>
    public bool LanesAlike { get; }

    /// <summary>What the four wheels of the first car meet, how far behind its front wheels, and how fast.</summary>
    public (Profile Profile, double Behind, double Speed)[] First => [.. under.Select(lanes => tracks[lanes[0]])];

    /// <summary>Heights once every wheel has left the road.</summary>
    public Quad<TLane> After { get; }

    /// <summary>Of n steps, the first at which any wheel may be off the level and the first from which all are on the last level.</summary>
    public (int First, int Last) Moving(double start, double step, int n)
    {
        var (first, last) = (n, 0);
        for (var k = 0; k < group.Requests.Length; k++)
        {
            var own = group.Roads[k].Moving(group.Requests[k].Speed, start, step, n);
            (first, last) = (Math.Min(first, own.First), Math.Max(last, own.Last));
        }

        return (first, last);
    }

    /// <summary>Heights and rates from step first of a run on, two quads for each of the table's times.</summary>
    public void Read(Span<Quad<TLane>> table, double start, int first, double step)
    {
        double[] level = [.. tracks.Select(t => t.Profile.StartHeight)];
        Span<double> heights = stackalloc double[readers.Length];
        Span<double> rates = stackalloc double[readers.Length];
        for (var k = 0; k < table.Length / 2; k++)
        {
            // Counted from the record's start, as a pass alone counts.
            var t = start + ((first + k) * step);
            Read(t, level, heights, rates);
            table[2 * k] = Each(heights);
            table[(2 * k) + 1] = Each(rates);
        }
    }

    /// <summary>The same where <see cref="LanesAlike"/>: four heights and four rates for each of the table's times.</summary>
    public void Read(Span<double> table, double start, int first, double step)
    {
        double[] level = [.. tracks.Select(t => t.Profile.StartHeight)];
        Span<int> corners = [under[0][0], under[1][0], under[2][0], under[3][0]];
        Span<double> heights = stackalloc double[readers.Length];
        Span<double> rates = stackalloc double[readers.Length];
        for (var k = 0; k < table.Length; k += 8)
        {
            var t = start + ((first + (k / 8)) * step);
            Read(t, level, heights, rates);
            for (var i = 0; i < 4; i++)
            {
                table[k + i] = heights[corners[i]];
                table[k + 4 + i] = rates[corners[i]];
            }
        }
    }

    /// <summary>The sharp steps under the wheels, in the order of a run's steps.</summary>
    public RoadJump<TLane>[] Jumps(double start, double step)
    {
        if (!group.Roads.Any(road => road.HasJump))
        {
            return [];
        }

        var jumps = new List<RoadJump<TLane>>();
        for (var lane = 0; lane < TLane.Count; lane++)
        {
            for (var corner = 0; corner < 4; corner++)
            {
                var (profile, behind, speed) = tracks[under[corner][lane]];
                foreach (var (at, near, far, share) in RoadJumps.Of(profile, behind, speed, start, step))
                {
                    jumps.Add(new(at, Only(corner, lane, near), Only(corner, lane, far), Only(corner, lane, share)));
                }
            }
        }

        return [.. jumps.OrderBy(jump => jump.At)];
    }

    private void Read(double t, double[] level, Span<double> heights, Span<double> rates)
    {
        for (var j = 0; j < heights.Length; j++)
        {
            var (_, behind, speed) = tracks[j];
            readers[j].At((speed * t) - behind, out var height, out var slope);
            (heights[j], rates[j]) = (height - level[j], speed * slope);
        }
    }

    private static Quad<TLane> Only(int corner, int lane, double value)
    {
        TLane At(int i)
        {
            Span<double> lanes = stackalloc double[TLane.Count];
            lanes.Clear();
            lanes[lane] = i == corner ? value : 0.0;
            return TLane.From(lanes);
        }

        return Quad<TLane>.Of(At(0), At(1), At(2), At(3));
    }

    private Quad<TLane> Each(ReadOnlySpan<double> values)
    {
        var (frontLeft, rearLeft) = (Across(under[0], values), Across(under[2], values));
        return sidesAlike
            ? Quad<TLane>.Of(frontLeft, frontLeft, rearLeft, rearLeft)
            : Quad<TLane>.Of(frontLeft, Across(under[1], values), rearLeft, Across(under[3], values));
    }

    private TLane Across(int[] track, ReadOnlySpan<double> values)
    {
        if (LanesAlike)
        {
            return TLane.Of(values[track[0]]);
        }

        Span<double> lanes = stackalloc double[TLane.Count];
        for (var lane = 0; lane < lanes.Length; lane++)
        {
            lanes[lane] = values[track[lane]];
        }

        return TLane.From(lanes);
    }

    private int Track(Profile profile, double behind, double speed)
    {
        var known = tracks.FindIndex(t => ReferenceEquals(t.Profile, profile) && t.Behind == behind && t.Speed == speed);
        if (known < 0)
        {
            known = tracks.Count;
            tracks.Add((profile, behind, speed));
        }

        return known;
    }
}
