using System.Diagnostics;
using System.Globalization;
using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Quantities;

namespace Heaveline.Ordeal;

/// <summary>
/// Reads logs of drives that nobody would write: small sound ones as several loggers write them, spoilt at random. Each must be refused in words, or
/// come out as a drive of numbers along axes of length 1, in two seconds of processor time and bounded memory.
/// </summary>
internal static class LogFuzz
{
    private const long MostBytes = 400_000_000;
    private const double Seconds = 14.0;
    private const double Rate = 20.0;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2.0);

    // Names, so that files of one log are told apart, and how each writes.
    private static readonly (string Name, Func<string> Text)[] Loggers =
    [
        ("comma.csv", () => Rows(
            "seconds_elapsed,accelX (m/s²),accelY (m/s²),accelZ (m/s²),gyroX (rad/s),gyroY (rad/s),gyroZ (rad/s),speed (m/s)\n",
            t => Plain(t), ",", 1.0, 1.0)),
        ("semicolon.csv", () => Rows("Zeit (ms);acc x (g);acc y (g);acc z (g);gyr x (°/s);gyr y (°/s);gyr z (°/s);speed (km/h)\n",
            t => Plain(1000.0 * t), ";", 1.0 / 9.80665, 180.0 / Math.PI, 3.6).Replace('.', ',')),
        ("zone.csv", () => Rows("timestamp,ax,ay,az,wx,wy,wz,speed\n",
            t => DateTime.UnixEpoch.AddDays(20_000.0).AddSeconds(t).ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture),
            ",", 1.0, 1.0)),
        ("epoch.txt", () => Rows("sep=\t\ntime\tacceleration_x\tacceleration_y\tacceleration_z\tgyro_x\tgyro_y\tgyro_z\tspeed\n",
            t => (1_700_000_000_000_000_000L + (long)(1e9 * t)).ToString(CultureInfo.InvariantCulture), "\t", 1000.0 / 9.80665, 1.0)),
        ("bare.csv", () => Rows("", t => Plain(t), ",", 1.0, 1.0)),
    ];

    /// <summary>As a bench: prints what came of it.</summary>
    public static int Run(int inputs, int seed, int first)
    {
        var clock = Stopwatch.StartNew();
        var tally = Of(inputs, seed, first);
        Console.WriteLine(
            FormattableString.Invariant($"{inputs} logs in {clock.Elapsed.TotalMinutes:F1} min, seed {seed}: {tally.Accepted} read, ")
            + FormattableString.Invariant($"{inputs - tally.Accepted - tally.Faults.Count} refused, {tally.Faults.Count} faults; slowest ")
            + FormattableString.Invariant($"{tally.Slowest.TotalMilliseconds:F0} ms of processor time, most memory for one ")
            + FormattableString.Invariant($"{tally.MostBytes / 1e6:F0} MB."));
        tally.Faults.ToList().ForEach(Console.WriteLine);
        return tally.Faults.Count == 0 ? 0 : 1;
    }

    /// <summary>Reads so many spoilt logs.</summary>
    /// <param name="inputs">How many.</param>
    /// <param name="seed">From which seed.</param>
    /// <param name="first">The number of the first: one that was found is tried again by itself.</param>
    public static FuzzTally Of(int inputs, int seed, int first = 0)
    {
        string[] sound = [.. Loggers.Select(l => l.Text())];
        var tally = new FuzzTally();
        for (var n = first; n < first + inputs; n++)
        {
            var chance = new Random(unchecked((int)(((uint)seed * 2654435761u) ^ ((uint)n * 2246822519u))));
            var which = chance.Next(sound.Length);
            var bytes = Encoding.UTF8.GetBytes(Mutation.Of(sound, which, chance));
            Read(Loggers[which].Name, bytes, FormattableString.Invariant($"log {n} of seed {seed}, {Loggers[which].Name}"), tally);
        }

        return tally;
    }

    private static void Read(string name, byte[] bytes, string what, FuzzTally tally)
    {
        var worked = Environment.CpuUsage.TotalTime;
        var before = GC.GetTotalAllocatedBytes(precise: true);
        using var watch = new Timer(_ => Environment.FailFast($"{what}: still being read after a minute."), null, 60_000, Timeout.Infinite);
        try
        {
            var reading = LogFile.Read([(name, bytes)]);
            if (reading.Log is null ? reading.Refusals.Length == 0 || reading.Refusals.Any(r => r.Message.Length == 0) : reading.Refusals.Length > 0)
            {
                tally.Faults.Add($"{what}: {(reading.Log is null ? "neither read nor refused in words" : "read and refused")}");
            }
            else if (reading.Log is { } log)
            {
                Drive(log, what, tally);
            }
        }
        catch (Exception e)
        {
            tally.Faults.Add($"{what}: {e.GetType().Name}: {e.Message} {e.StackTrace?.Split('\n')[0].Trim()}");
        }

        var (time, allocated) = (Environment.CpuUsage.TotalTime - worked, GC.GetTotalAllocatedBytes(precise: true) - before);
        tally.Slowest = time > tally.Slowest ? time : tally.Slowest;
        tally.MostBytes = Math.Max(tally.MostBytes, allocated);
        if (time > Longest || allocated > MostBytes)
        {
            tally.Faults.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {time.TotalSeconds:F1} s and {allocated / 1e6:F0} MB"));
        }
    }

    // What is read must be a drive, or be refused by its own name.
    private static void Drive(Log log, string what, FuzzTally tally)
    {
        Drive drive;
        try
        {
            drive = Heaveline.Drives.Drive.Of(log);
        }
        catch (RefusedValueException refused)
        {
            if (refused.Message.Length == 0)
            {
                tally.Faults.Add($"{what}: refused without a word");
            }

            return;
        }

        var trust = Trust.Of(drive);
        var isNumber = drive.Vertical.Concat(drive.PitchRate).Concat(drive.Speed).Append(drive.Mount.Gain).All(double.IsFinite);
        if (!isNumber || Math.Abs(drive.Mount.Up.Length - 1.0) > 1e-9)
        {
            tally.Faults.Add($"{what}: a drive of no numbers");
        }
        else if (trust.Verdicts.Any(v => v.Reason.Length == 0))
        {
            tally.Faults.Add($"{what}: a verdict without a reason");
        }
        else
        {
            tally.Accepted++;
        }
    }

    private static string Plain(double t) => t.ToString("F4", CultureInfo.InvariantCulture);

    private static string Rows(string head, Func<double, string> time, string between, double force, double turn, double speed = 1.0)
    {
        var text = new StringBuilder(head);
        for (var i = 0; i < Seconds * Rate; i++)
        {
            var t = i / Rate;
            double[] values =
            [
                force * 0.8 * Math.Cos(0.7 * t), force * 1.5 * Math.Sin(0.5 * t), force * (9.80665 + (0.6 * Math.Sin(8.0 * t))),
                turn * 0.02 * Math.Sin(9.0 * t), turn * 0.05 * Math.Cos(8.0 * t), turn * 0.2 * Math.Sin(0.5 * t), speed * (8.0 + Math.Sin(0.7 * t)),
            ];
            text.Append(time(t)).Append(between).AppendJoin(between, values.Select(v => v.ToString("F4", CultureInfo.InvariantCulture))).Append('\n');
        }

        return text.ToString();
    }
}
