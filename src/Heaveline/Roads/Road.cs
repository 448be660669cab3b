using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// A road as the two wheel tracks see it. x = 0 is where an obstacle begins: at t = 0 of a pass the front wheel centres stand there.
/// Waves and measured roads begin at x = 0 too.
/// </summary>
public sealed partial record Road
{
    private const string InBothTracks = "both tracks";

    /// <summary>Name, not blank.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the road a name."); }

    /// <summary>What kind of road it is.</summary>
    public required RoadKind Kind { get; init; }

    /// <summary>Height in the left wheel track.</summary>
    public required Profile Left { get; init; }

    /// <summary>Height in the right wheel track.</summary>
    public required Profile Right { get; init; }

    /// <summary>Where the obstacle lies; none on roads without a beginning and an end of their own.</summary>
    public RoadEvent? Event { get; init; }

    /// <summary>The road in words, for captions.</summary>
    public required string Caption { get; init => field = Checked.NotBlank(value, "Say what the road is."); }

    /// <summary>
    /// The road in words for a vehicle with two tracks or with one: that an obstacle lies in both tracks is nothing to a two-wheeler, and of left
    /// and right it knows nothing.
    /// </summary>
    /// <param name="hasTracks">Whether the vehicle has a left and a right.</param>
    internal string CaptionFor(bool hasTracks) => hasTracks ? Caption
        : OneTrack().Replace(Caption.Replace($", {InBothTracks}", "", StringComparison.Ordinal), "");

    /// <summary>
    /// The road as a vehicle meets it: a two-wheeler rides over an obstacle in whichever track it lies. Of a road that differs in both tracks each
    /// half of its wheels meets its own.
    /// </summary>
    /// <param name="hasTracks">Whether the vehicle has a left and a right.</param>
    internal Road MetBy(bool hasTracks) => hasTracks || Side is not { } side ? this
        : On(side) with { Name = UnderWheels().Replace(Name, ""), Caption = CaptionFor(hasTracks) };

    /// <summary>The track in which all of it lies; null where both are level, or neither is.</summary>
    internal Tracks? Side => (Left.IsLevel, Right.IsLevel) switch
    {
        (false, true) => Tracks.Left,
        (true, false) => Tracks.Right,
        _ => null,
    };

    /// <summary>The heights of one track in both.</summary>
    internal Road On(Tracks side) => side == Tracks.Left ? this with { Right = Left } : this with { Left = Right };

    [GeneratedRegex(", (?:left|right) track(?=,|$)", RegexOptions.CultureInvariant)]
    private static partial Regex OneTrack();

    [GeneratedRegex(" under the (?:left|right) wheels$", RegexOptions.CultureInvariant)]
    private static partial Regex UnderWheels();

    /// <summary>A level road.</summary>
    public static Road Flat { get; } =
        new() { Name = "flat road", Kind = RoadKind.Flat, Left = Profile.Flat, Right = Profile.Flat, Caption = "level road" };

    /// <summary>Where the obstacle begins, m, if there is one.</summary>
    public double? EventStart => Event?.Start;

    /// <summary>Where the obstacle ends, m, if there is one.</summary>
    public double? EventEnd => Event?.End;

    /// <summary>Where the first track leaves its first level, m.</summary>
    public double Start => Math.Min(Left.Start, Right.Start);

    /// <summary>Where both tracks have reached their last level, m.</summary>
    public double End => Math.Max(Left.End, Right.End);

    /// <summary>Whether a height jumps; see <see cref="Profile.HasJump"/>.</summary>
    public bool HasJump => Left.HasJump || Right.HasJump;

    /// <summary>A level road with one obstacle at x = 0.</summary>
    /// <param name="obstacle">The obstacle.</param>
    /// <param name="tracks">Which wheel tracks it lies in.</param>
    /// <exception cref="RefusedValueException">Its sizes do not fit one another.</exception>
    public static Road From(Obstacle obstacle, Tracks tracks = Tracks.Both)
    {
        var profile = obstacle.Draw();
        var where = tracks switch { Tracks.Left => "left track", Tracks.Right => "right track", _ => InBothTracks };
        return new Road
        {
            Name = obstacle.Shape,
            Kind = RoadKind.Obstacle,
            Left = tracks == Tracks.Right ? Profile.Flat : profile,
            Right = tracks == Tracks.Left ? Profile.Flat : profile,
            Event = new RoadEvent(0.0, obstacle.OverallLength),
            Caption = $"{obstacle.Shape}, {obstacle.Sizes}, {where}",
        };
    }

    /// <summary>A road of waves, beginning at x = 0 with its lead-in.</summary>
    public static Road From(SineRoad sine)
    {
        var lag = sine.RightLag.Si == 0.0 ? "" : FormattableString.Invariant($", right track {In.Degrees.Of(sine.RightLag.Si):0.#}° behind");
        return new Road
        {
            Name = "sine road",
            Kind = RoadKind.Sine,
            Left = sine.DrawLeft(),
            Right = sine.DrawRight(),
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"sine road, amplitude {In.Millimetres.Of(sine.Amplitude.Si):0.###} mm, wavelength "
                + $"{sine.Wavelength.Si:0.####} m, {sine.Waves:0.##} waves{lag}"),
        };
    }

    /// <summary>A random road, beginning at x = 0 with its lead-in if it has one.</summary>
    /// <param name="random">The road.</param>
    /// <param name="cancellation">Stops it: a long road takes seconds.</param>
    /// <exception cref="RefusedValueException">Its spacing is too wide for its waves, or it has too many points.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Road From(RandomRoad random, CancellationToken cancellation = default)
    {
        var (left, right) = random.Draw(cancellation);
        var (spectrum, tracks) = (
            random.Spectrum, random.Track.Si == 0.0 ? "one track" : FormattableString.Invariant($"tracks {random.Track.Si:0.###} m apart"));
        return new Road
        {
            Name = "random road",
            Kind = RoadKind.Random,
            Left = left,
            Right = right,
            Caption = string.Create(
                CultureInfo.InvariantCulture,
                $"random road, {In.MillionthsOfCubicMetres.Of(spectrum.Density.Si):G6}e-6 m³ at 0.1 cycles/m ({RoadClass.Of(spectrum.Density)}), "
                + $"waviness {spectrum.Waviness:0.##}, {spectrum.Band}, {left.End:0.##} m, {tracks}, seed {random.Seed}"),
        };
    }

    /// <summary>
    /// A measured road. Distances count from the first; one height is taken from all, midway between the tracks' first ones, so that their
    /// difference stays. From 50 m of length on the slope from the first point to the last is taken off (<see cref="MeasuredGrade"/>). Between
    /// samples it runs as cubic pieces with slopes from neighbouring samples; across a gap it keeps between the samples beside it.
    /// </summary>
    /// <param name="name">Name of the road.</param>
    /// <param name="distances">Distance of each point, m, growing, shape (n), n at least 4.</param>
    /// <param name="left">Heights of the left track, m, shape (n), less the slope within 10 m of the first.</param>
    /// <param name="right">Heights of the right track, m, shape (n), or null when both wheels run in one track.</param>
    /// <param name="cancellation">Stops it: a road may have millions of points.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    /// <exception cref="RefusedValueException">
    /// Too few points, points out of order, heights out of range, or a gap so wide that no road is made of it (<see cref="RoadGap"/>).
    /// </exception>
    public static Road FromMeasured(
        string name,
        IReadOnlyList<double> distances,
        IReadOnlyList<double> left,
        IReadOnlyList<double>? right,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(distances);
        ArgumentNullException.ThrowIfNull(left);
        var origin = distances.Count > 0 ? distances[0] : 0.0;
        var grade = left.Count == distances.Count && (right is null || right.Count == distances.Count)
            ? MeasuredGrade.Of(distances, left, right)
            : new MeasuredGrade(0.0);
        var (onLeft, onRight) = (Level(left), right is null ? null : Level(right));
        var first = onLeft.Count > 0 ? onLeft[0] : 0.0;
        var datum = onRight is { Count: > 0 } ? 0.5 * (first + onRight[0]) : first;
        var knots = SampledHeights.Knots(distances);
        var leftProfile = SampledHeights.Draw(knots, distances, onLeft, datum, cancellation);
        var rightProfile = onRight is null ? leftProfile : SampledHeights.Draw(knots, distances, onRight, datum, cancellation);
        var gaps = RoadGap.Among(distances);
        return new Road
        {
            Name = name,
            Kind = RoadKind.Measured,
            Left = leftProfile,
            Right = rightProfile,
            Caption = FormattableString.Invariant(
                $"{name}, measured, {leftProfile.End:0.##} m, {distances.Count} points, {(right is null ? "left and right alike" : "two tracks")}")
                + (grade.IsHill ? FormattableString.Invariant($", less its slope of {In.Percent.Of(grade.Slope):0.##} %") : "")
                + string.Concat(gaps.Select(gap => FormattableString.Invariant($", no point from {gap.From:0.##} to {gap.To:0.##} m"))),
        };

        IReadOnlyList<double> Level(IReadOnlyList<double> heights)
        {
            if (!grade.IsHill)
            {
                return heights;
            }

            var level = new double[heights.Count];
            for (var i = 0; i < level.Length; i++)
            {
                level[i] = grade.Without(heights[i], distances[i] - origin);
            }

            return level;
        }
    }

    /// <summary>Both tracks as a tyre's contact length passes them on; see <see cref="Profile.AveragedOver"/>.</summary>
    public Road AveragedOver(Amount<Length> contact)
    {
        var left = Left.AveragedOver(contact);
        return this with { Left = left, Right = ReferenceEquals(Left, Right) ? left : Right.AveragedOver(contact) };
    }

    /// <summary>This obstacle and then another, on the level where this one ended.</summary>
    /// <param name="other">A road with an obstacle.</param>
    /// <param name="gap">Distance from the end of this obstacle to the beginning of the other, 0 or above.</param>
    public Road Then(Road other, Amount<Length> gap)
    {
        if (Event is not { } first || other.Event is not { } second)
        {
            throw new RefusedValueException(
                "road in a sequence",
                $"a road without obstacle ({(Event is null ? Name : other.Name)})",
                "a road with an obstacle",
                "Join obstacles only.");
        }

        var start = first.End + Checked.NotNegative(gap, "Give the distance between the obstacles.").Si;
        var next = start - second.Start;
        var left = Left.Then(other.Left.Shifted(next));
        return this with
        {
            Name = $"{Name}, then {other.Name}",
            Left = left,
            Right = ReferenceEquals(Left, Right) && ReferenceEquals(other.Left, other.Right) ? left : Right.Then(other.Right.Shifted(next)),
            Event = new RoadEvent(first.Start, start + (second.End - second.Start)),
            Caption = FormattableString.Invariant($"{Caption}; {gap.Si:0.###} m further: {other.Caption}"),
        };
    }
}
