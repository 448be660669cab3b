namespace Heaveline.Drives;

/// <summary>Where on the ground a car was, and which way it went.</summary>
/// <param name="Latitude">Latitude, rad, north positive.</param>
/// <param name="Longitude">Longitude, rad, east positive.</param>
/// <param name="Heading">Direction of travel, rad, counter-clockwise from east; not a number where it is not known.</param>
/// <param name="HalfWidth">Radius of the circle that holds it nine times in ten, m.</param>
public readonly record struct GroundPlace(double Latitude, double Longitude, double Heading, double HalfWidth)
{
    /// <summary>Mean radius of the Earth, m [IUGG, (2a + b)/3 of the Geodetic Reference System 1980].</summary>
    public const double EarthRadius = 6_371_008.8;

    /// <summary>How far two crossings of one bump may lie apart beside what the fixes leave open, m. A proposal of this program.</summary>
    public const double Reach = 15.0;

    /// <summary>How far their directions may differ, rad. A proposal of this program.</summary>
    public const double MostTurned = Math.PI / 3.0;

    /// <summary>
    /// Radii of the circles that hold two of three places and nine of ten where east and north scatter alike and normally, in standard deviations of
    /// one of them: √(2 ln(1/(1 − p))), two of three as the 68 % of positions.
    /// </summary>
    internal static readonly double TwoOfThree = Math.Sqrt(2.0 * Math.Log(1.0 / 0.32)), NineOfTen = Math.Sqrt(2.0 * Math.Log(10.0));

    /// <summary>How far two places lie apart, m, as on a level map: good to a thousandth over some kilometres.</summary>
    /// <param name="other">The other place.</param>
    public double DistanceTo(GroundPlace other)
    {
        var (east, north) = To(other.Latitude, other.Longitude);
        return Math.Sqrt((east * east) + (north * north));
    }

    /// <summary>Whether both may be crossings of one bump: within 15 m and what the fixes leave open, directions within 60°.</summary>
    /// <param name="other">The other place.</param>
    public bool IsSame(GroundPlace other) =>
        DistanceTo(other) <= ReachTo(other) && !(Math.Abs(Math.IEEERemainder(Heading - other.Heading, 2.0 * Math.PI)) > MostTurned);

    /// <summary>The mean of several places that lie near each other, their directions among it; null where there is none.</summary>
    /// <param name="places">The places; those that are not known are passed over.</param>
    public static GroundPlace? Mean(IEnumerable<GroundPlace?> places)
    {
        GroundPlace[] known = [.. places.OfType<GroundPlace>()];
        if (known.Length == 0)
        {
            return null;
        }

        // Of differences from the first: the sum of whole longitudes would lose digits, and fail at the date line.
        var first = known[0];
        GroundPlace[] headed = [.. known.Where(p => double.IsFinite(p.Heading))];
        return new GroundPlace(
            first.Latitude + known.Average(p => p.Latitude - first.Latitude),
            first.Longitude + known.Average(p => Math.IEEERemainder(p.Longitude - first.Longitude, 2.0 * Math.PI)),
            headed.Length == 0 ? double.NaN : Math.Atan2(headed.Sum(p => Math.Sin(p.Heading)), headed.Sum(p => Math.Cos(p.Heading))),
            known.Max(p => p.HalfWidth));
    }

    /// <summary>How far apart two crossings of one bump may be found, m.</summary>
    internal double ReachTo(GroundPlace other) => Reach + Math.Max(HalfWidth, other.HalfWidth);

    /// <summary>How far east and north of this place another lies, m, on the level map about this one.</summary>
    /// <param name="latitude">Latitude of the other, rad.</param>
    /// <param name="longitude">Its longitude, rad.</param>
    internal (double East, double North) To(double latitude, double longitude) => (
        EarthRadius * Math.Cos(Latitude) * Math.IEEERemainder(longitude - Longitude, 2.0 * Math.PI), EarthRadius * (latitude - Latitude));

    /// <summary>Latitude and longitude of what lies so far east and north of this place, rad, on the same map.</summary>
    /// <param name="east">How far east, m.</param>
    /// <param name="north">How far north, m.</param>
    internal (double Latitude, double Longitude) Beyond(double east, double north) =>
        (Latitude + (north / EarthRadius), Longitude + (east / (EarthRadius * Math.Cos(Latitude))));
}
