using Heaveline.Numerics;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>The speed of a log held against the way between its positions: a header that names another unit is off by the units' ratio.</summary>
internal static class SpeedByPlace
{
    // Over so long ways, s, and so far, m, fixes and bends move the ratio by little; fewer ways tell nothing.
    private const double Longest = 12.0;
    private const double Far = 60.0;
    private const int Fewest = 6;

    // Within so much, as a logarithm, a record agrees with the positions, or with them in another unit. A proposal of this program.
    private const double Agrees = 0.15;

    /// <summary>The speed as the positions say that it is meant; the same where they agree with it, or do not tell.</summary>
    /// <param name="log">The log.</param>
    /// <param name="speed">Its speed.</param>
    /// <param name="story">Gets what was decided.</param>
    public static TimedTrack Of(Log log, TimedTrack speed, List<StoryLine> story)
    {
        if (log.Overrulings.Word("speed") is not null || Ratio(log, speed) is not { } ratio || Math.Abs(Math.Log(ratio)) < Agrees)
        {
            return speed;
        }

        var taken = SpeedUnit.All.FirstOrDefault(u => u.Name == speed.Track.UnitTaken) ?? SpeedUnit.All[0];
        var (said, meant) = (speed.Track.UnitSaid.Length > 0, SpeedUnit.All.Take(3).MinBy(u => Math.Abs(Math.Log(ratio * taken.Factor / u.Factor)))!);
        var scale = meant.Factor / taken.Factor;
        if (meant.Name == taken.Name || Math.Abs(Math.Log(ratio / scale)) > Agrees)
        {
            story.Add(new StoryLine(
                "speed-place",
                Text($"By its positions the car went {ratio:F2} times as fast as by the log's speed, read in {taken.Name}: ")
                + "one of them is wrong. The speed is taken as it stands; say its unit where it is another.",
                IsDoubtful: true));
            return speed;
        }

        story.Add(new StoryLine(
            "speed-unit",
            $"Speed agrees with the positions when it is read in {meant.Name}, not in {taken.Name} "
            + (said ? "as the header says: it was read so." : "as was guessed: it was read so."),
            IsDoubtful: true));
        return TimedTrack.Of(speed.Track with
        {
            UnitTaken = meant.Name,
            Values = [[.. speed.Track.Values[0].Select(v => v * scale)]],
        })!;
    }

    // The way between fixes over that by the speed, the middle of all.
    private static double? Ratio(Log log, TimedTrack speed)
    {
        if (log.Of(SensorKind.Position) is not { } track || TimedTrack.Of(track) is not { } places)
        {
            return null;
        }

        var way = new double[speed.Times.Length];
        for (var i = 1; i < way.Length; i++)
        {
            way[i] = way[i - 1] + (0.5 * (speed.Values[0][i] + speed.Values[0][i - 1]) * (speed.Times[i] - speed.Times[i - 1]));
        }

        var (ratios, from) = (new List<double>(), 0);
        var origin = new GroundPlace(places.Values[0][0], places.Values[1][0], double.NaN, 0.0);
        for (var to = 1; to < places.Times.Length; to++)
        {
            var time = places.Times[to] - places.Times[from];
            if (time > Longest)
            {
                from = to;
                continue;
            }

            var (a, b) = (At(from), At(to));
            var (length, driven) = (Math.Sqrt(Math.Pow(b.East - a.East, 2) + Math.Pow(b.North - a.North, 2)), WayAt(to) - WayAt(from));
            if (length < Far)
            {
                continue;
            }

            if (driven > 1.0)
            {
                ratios.Add(length / driven);
            }

            from = to;
        }

        return ratios.Count < Fewest ? null : Middle.Of([.. ratios]);

        (double East, double North) At(int i) => origin.To(places.Values[0][i], places.Values[1][i]);

        double WayAt(int i)
        {
            var t = places.Times[i];
            var k = Math.Clamp(Array.BinarySearch(speed.Times, t) is var found && found >= 0 ? found : ~found - 1, 0, way.Length - 2);
            var share = Math.Clamp((t - speed.Times[k]) / (speed.Times[k + 1] - speed.Times[k]), 0.0, 1.0);
            return way[k] + (share * (way[k + 1] - way[k]));
        }
    }
}
