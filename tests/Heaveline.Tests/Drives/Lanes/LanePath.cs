namespace Heaveline.Tests.Drives.Lanes;

/// <summary>
/// Where the lane lies on the map: its four sites stand where they stand at every lap, and are driven over straight for 20 m either side. Between
/// them the car goes ways as long as it drove, so that no two laps have one length.
/// </summary>
/// <remarks>
/// Speed and sites are those of the log; the turns of the ways between are not those of its gyro, and nothing that is read compares the two.
/// </remarks>
internal sealed class LanePath
{
    private const double Straight = 20.0;

    // East and north of each site, m, and the direction in which it is driven, rad.
    private static readonly Dictionary<string, (double East, double North, double Heading)> Places = new()
    {
        ["Chapel hump"] = (0.0, 0.0, 0.0),
        ["Bakery table"] = (65.0, 0.0, 0.0),
        ["Mill joint"] = (105.0, 70.0, 0.5 * Math.PI),
        ["Orchard dip"] = (20.0, 110.0, Math.PI),
    };

    private readonly LanePlan plan;
    private readonly List<(double Distance, double East, double North)> corners = [];

    private LanePath(LanePlan plan) => this.plan = plan;

    /// <summary>Metres east and north of the first crossing of Chapel hump at an instant, s.</summary>
    /// <param name="plan">How it is driven.</param>
    /// <exception cref="InvalidOperationException">A way is driven in fewer metres than it is long.</exception>
    public static Func<double, (double East, double North)> Of(LanePlan plan)
    {
        var path = new LanePath(plan);
        path.Draw();
        return path.At;
    }

    private void Draw()
    {
        var crossings = plan.Crossings;
        var first = crossings[0];
        Add(0.0, -first.Distance, 0.0);
        foreach (var crossing in crossings)
        {
            var (east, north, heading) = Places[crossing.Site];
            var (ahead, aside) = (Math.Cos(heading), Math.Sin(heading));
            Detour(crossing.Distance - Straight, east - (Straight * ahead), north - (Straight * aside));
            Add(crossing.Distance + Straight, east + (Straight * ahead), north + (Straight * aside));
        }

        // After the last dip straight on.
        var (distance, lastEast, lastNorth) = corners[^1];
        var end = plan.Line.Distance(plan.Line.Length);
        Add(end + 1.0, lastEast - (end + 1.0 - distance), lastNorth);
    }

    private void Add(double distance, double east, double north) => corners.Add((distance, east, north));

    // From the last corner to a place by two legs that are together as long as the car drove.
    private void Detour(double distance, double east, double north)
    {
        var (from, fromEast, fromNorth) = corners[^1];
        var (across, along) = (east - fromEast, north - fromNorth);
        var (direct, driven) = (Math.Sqrt((across * across) + (along * along)), distance - from);
        if (driven < direct - 1e-6)
        {
            throw new InvalidOperationException(
                FormattableString.Invariant($"Between {from:F0} and {distance:F0} m {driven:F0} m are driven on a way of {direct:F0} m."));
        }

        // The corner of an isosceles triangle, on the right.
        var height = 0.5 * Math.Sqrt(Math.Max((driven * driven) - (direct * direct), 0.0));
        Add(
            0.5 * (from + distance),
            (0.5 * (fromEast + east)) + (height * along / direct),
            (0.5 * (fromNorth + north)) - (height * across / direct));
        Add(distance, east, north);
    }

    private (double East, double North) At(double time)
    {
        var distance = plan.Line.Distance(time);
        var k = Math.Clamp(corners.FindIndex(c => c.Distance > distance) - 1, 0, corners.Count - 2);
        var (a, b) = (corners[k], corners[k + 1]);
        var share = (distance - a.Distance) / (b.Distance - a.Distance);
        return (a.East + (share * (b.East - a.East)), a.North + (share * (b.North - a.North)));
    }
}
