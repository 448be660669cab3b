using System.Collections.Immutable;

namespace Heaveline.Figures.Silhouettes;

/// <summary>Where people sit in a closed car: four corners, and the line that the glass stands on.</summary>
internal sealed record Cabin
{
    // A head with its hair, and a little air.
    private const double HeadRoom = 0.17;

    private Cabin(ScenePoint rearBase, ScenePoint rearTop, ScenePoint frontTop, ScenePoint frontBase) =>
        (RearBase, RearTop, FrontTop, FrontBase) = (rearBase, rearTop, frontTop, frontBase);

    /// <summary>Foot of the rear window.</summary>
    public ScenePoint RearBase { get; }

    /// <summary>Rear end of the roof.</summary>
    public ScenePoint RearTop { get; }

    /// <summary>Front end of the roof.</summary>
    public ScenePoint FrontTop { get; }

    /// <summary>Foot of the windscreen.</summary>
    public ScenePoint FrontBase { get; }

    /// <summary>The middle of the roof.</summary>
    public double Middle => 0.5 * (RearTop.X + FrontTop.X);

    /// <summary>The usual cabin, drawn out forwards and backwards until every head is under its roof.</summary>
    /// <param name="heads">The heads.</param>
    /// <param name="rearBase">Usual foot of the rear window.</param>
    /// <param name="rearTop">Usual rear end of the roof.</param>
    /// <param name="frontTop">Usual front end of the roof.</param>
    /// <param name="frontBase">Usual foot of the windscreen.</param>
    /// <param name="from">Rearmost place of a window's foot.</param>
    /// <param name="to">Foremost place of a windscreen's foot.</param>
    public static Cabin Around(
        ImmutableArray<ScenePoint> heads,
        ScenePoint rearBase,
        ScenePoint rearTop,
        ScenePoint frontTop,
        ScenePoint frontBase,
        double from,
        double to)
    {
        var on = heads.Select(head => head.X + HeadRoom - frontTop.X).Append(0.0).Max();
        var back = heads.Select(head => rearTop.X - head.X + HeadRoom).Append(0.0).Max();
        return new Cabin(
            new(Math.Max(Math.Min(from, rearBase.X), rearBase.X - back), rearBase.Z),
            new(rearTop.X - back, rearTop.Z),
            new(frontTop.X + on, frontTop.Z),
            new(Math.Min(Math.Max(to, frontBase.X), frontBase.X + on), frontBase.Z));
    }

    /// <summary>Panes between the pillars.</summary>
    /// <param name="pillar">How far the glass stays inside the corners, m.</param>
    /// <param name="radius">Rounding of its corners, m.</param>
    /// <param name="posts">Where posts stand between two panes; those beside the cabin stand nowhere.</param>
    public ImmutableArray<SilhouettePath> Glass(double pillar, double radius, params IEnumerable<double> posts)
    {
        var top = Math.Min(RearTop.Z, FrontTop.Z) - (0.95 * pillar);
        var foot = Math.Max(RearBase.Z, FrontBase.Z) + 0.02;
        double Rear(double z) => On(RearBase, RearTop, z) + pillar;
        double Front(double z) => On(FrontBase, FrontTop, z) - pillar;
        double? none = null;
        double?[] cuts =
        [
            none,
            .. posts.Where(x => x > Math.Max(Rear(top), Rear(foot)) + 0.1 && x < Math.Min(Front(top), Front(foot)) - 0.1).Select(x => (double?)x),
            none,
        ];
        var panes = ImmutableArray.CreateBuilder<SilhouettePath>();
        for (var i = 0; i + 1 < cuts.Length; i++)
        {
            var (rearTop, rearFoot) = cuts[i] is { } rear ? (rear + 0.03, rear + 0.03) : (Rear(top), Rear(foot));
            var (frontTop, frontFoot) = cuts[i + 1] is { } front ? (front - 0.03, front - 0.03) : (Front(top), Front(foot));
            if (frontFoot - rearFoot >= 0.05 && frontTop - rearTop >= 0.02)
            {
                panes.Add(SilhouettePath.Rounded(
                    [new(rearFoot, foot, radius), new(rearTop, top, 1.4 * radius), new(frontTop, top, 1.4 * radius), new(frontFoot, foot, radius)]));
            }
        }

        return panes.ToImmutable();
    }

    /// <summary>Where a line through two places is at a height, m.</summary>
    public static double On(ScenePoint a, ScenePoint b, double z) => a.X + ((b.X - a.X) * (z - a.Z) / Math.Max(b.Z - a.Z, 0.05));
}
