using System.Text.RegularExpressions;

namespace Heaveline.Files.Drives;

/// <summary>What a column means, by the words of its name.</summary>
/// <param name="Kind">What is in it; null where its name tells nothing of use.</param>
/// <param name="Unit">The unit that the name says; blank for none.</param>
/// <param name="Axis">x, y or z; blank for none.</param>
/// <param name="Group">The name without its axis: the columns of one sensor share it.</param>
internal sealed partial record ColumnMeaning(ColumnKind? Kind, string Unit, string Axis, string Group)
{
    // The first that is found wins: accuracy is never an acceleration, and the phone's own gravity no accelerometer.
    private static readonly (ColumnKind? Kind, Regex Words)[] Kinds =
    [
        (ColumnKind.PositionAccuracy, PositionAccuracy()), (null, Useless()),
        (ColumnKind.Gravity, Gravity()), (ColumnKind.WithoutGravity, WithoutGravity()), (ColumnKind.Acceleration, Force()),
        (ColumnKind.TurnRate, TurnRate()), (ColumnKind.Acceleration, Acceleration()), (ColumnKind.Latitude, Latitude()),
        (ColumnKind.Longitude, Longitude()), (null, Elsewhere()), (ColumnKind.Speed, Speed()),
        (ColumnKind.Time, Time()),
    ];

    private static readonly (string Unit, Regex Words)[] Units =
    [
        ("mg", MilliG()), ("m/s²", MetresPerSecondSquared()), ("°/s", DegreesPerSecond()), ("rad/s", RadiansPerSecond()),
        ("km/h", KilometresPerHour()), ("mph", MilesPerHour()), ("kn", Knots()), ("m/s", MetresPerSecond()), ("ns", Nanoseconds()),
        ("µs", Microseconds()), ("ms", Milliseconds()), ("s", Seconds()), ("g", Gs()),
    ];

    /// <summary>The meaning of a name.</summary>
    public static ColumnMeaning Of(string name)
    {
        var words = name.ToLowerInvariant().Trim();
        var kind = Kinds.FirstOrDefault(k => k.Words.IsMatch(words)).Kind;
        var unit = Units.FirstOrDefault(u => u.Words.IsMatch(words)).Unit ?? "";
        var plain = Brackets().Replace(words, "").Trim();
        var axis = LoneAxis().Match(plain) is { Success: true } alone ? alone
            : EndingAxis().Matches(plain) is { Count: > 0 } ends ? ends[^1] : null;
        return axis is null
            ? new ColumnMeaning(kind, unit, "", plain)
            : new ColumnMeaning(kind, unit, axis.Value, plain.Remove(axis.Index, 1));
    }

    /// <summary>What a file's own name tells of columns that are called by their axes alone; null for nothing.</summary>
    public static ColumnKind? OfFile(string file)
    {
        var words = file[(file.LastIndexOfAny(['/', '\\']) + 1)..].ToLowerInvariant();
        var kind = Kinds.FirstOrDefault(k => k.Words.IsMatch(words)).Kind;
        return kind is ColumnKind.Gravity or ColumnKind.WithoutGravity or ColumnKind.Acceleration or ColumnKind.TurnRate ? kind : null;
    }

    // Of the place alone: not of the speed, the height, the course, nor of another sensor.
    [GeneratedRegex(
        "^(?!.*(speed|vert|alti|\\balt\\b|bearing|course|head|gyr|acce|magn|\\bmag|orient|rotat|time|compass|gravi)).*accuracy|^h_?acc(?![a-z])")]
    private static partial Regex PositionAccuracy();

    [GeneratedRegex("latitude|(?<![a-z])lat(?![a-z])")]
    private static partial Regex Latitude();

    [GeneratedRegex("longitude|(?<![a-z])(lon|lng|long)(?![a-z])")]
    private static partial Regex Longitude();

    [GeneratedRegex("accura|uncert|error|variance|calib|altitude|\\balt\\b|magnet|\\bmag")]
    private static partial Regex Useless();

    [GeneratedRegex("gravity")]
    private static partial Regex Gravity();

    [GeneratedRegex("user|linear|without.?g")]
    private static partial Regex WithoutGravity();

    [GeneratedRegex("g.?force|^gf[xyz](?![a-z])|^f[xyz](?![a-z])")]
    private static partial Regex Force();

    [GeneratedRegex("gyr|rotation.?rate|angular|turn.?rate|^[wg]_?[xyz](?![a-z])|^omega")]
    private static partial Regex TurnRate();

    [GeneratedRegex("acc(?!u)|^a_?[xyz](?![a-z])|beschl")]
    private static partial Regex Acceleration();

    [GeneratedRegex("pitch|roll|yaw|orient|azimuth|heading|bearing|course|quat|sound|light|pressure")]
    private static partial Regex Elsewhere();

    [GeneratedRegex("speed|velocity|geschw")]
    private static partial Regex Speed();

    [GeneratedRegex("time|^t\\b|^t_|epoch|second|yyyy|date|\\butc|zeit|elapsed")]
    private static partial Regex Time();

    [GeneratedRegex("(?<![a-z])mg(?![a-z])|milli.?g(?![a-z])")]
    private static partial Regex MilliG();

    [GeneratedRegex("m/s[\\^/]?[2²]|m/\\(s|m/s/s|m/s\\^2|mps2|ms-2|m s-2|m\\^2/s|m·s|m/s\\*\\*2|m/sec\\^?2")]
    private static partial Regex MetresPerSecondSquared();

    [GeneratedRegex("deg(rees)?(/|_per_| per )s|°/s|dps|deg/sec")]
    private static partial Regex DegreesPerSecond();

    [GeneratedRegex("rad(ians)?(/|_per_| per )s|rps|rad_s")]
    private static partial Regex RadiansPerSecond();

    [GeneratedRegex("km/?h|kph|kmh")]
    private static partial Regex KilometresPerHour();

    [GeneratedRegex("mph|mi/h|miles")]
    private static partial Regex MilesPerHour();

    [GeneratedRegex("knot|(?<![a-z])(kn|kt|kts)(?![a-z])")]
    private static partial Regex Knots();

    [GeneratedRegex("m/s(?![a-z2²^])|(?<![a-z])mps(?![a-z0-9])|met(er|re)s per second")]
    private static partial Regex MetresPerSecond();

    [GeneratedRegex("(?<![a-z])ns(?![a-z])|nano")]
    private static partial Regex Nanoseconds();

    [GeneratedRegex("(?<![a-z])us(?![a-z])|µs|μs|micros")]
    private static partial Regex Microseconds();

    [GeneratedRegex("(?<![a-z])ms(?![a-z])|millis")]
    private static partial Regex Milliseconds();

    [GeneratedRegex("\\((s|sec)\\)|\\[(s|sec)\\]|_s(?![a-z])|second|(?<![a-z])sec(?![a-z])")]
    private static partial Regex Seconds();

    [GeneratedRegex("(?<![a-z0-9])g(?![a-z0-9])")]
    private static partial Regex Gs();

    [GeneratedRegex("\\(.*?\\)|\\[.*?\\]")]
    private static partial Regex Brackets();

    [GeneratedRegex("(?<![a-z])[xyz](?![a-z])")]
    private static partial Regex LoneAxis();

    [GeneratedRegex("[xyz](?![a-z])")]
    private static partial Regex EndingAxis();
}
