using System.Diagnostics;
using System.Globalization;
using System.Text;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Files.Drives;
using Heaveline.Numerics;

namespace Heaveline.Bench;

/// <summary>
/// The log of an hour at 100 samples a second, six axes and a speed, as one text: how long it is read, put on the car's axes and judged, beside the
/// floor of reading its bytes and counting its lines.
/// </summary>
internal static class DriveLogs
{
    private const int Rounds = 7;

    public static int Run(string[] args)
    {
        var seconds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 3600;
        var path = Path.Combine(Path.GetTempPath(), FormattableString.Invariant($"heaveline-bench-{Environment.ProcessId}.csv"));
        File.WriteAllText(path, Text(seconds));
        try
        {
            var length = new FileInfo(path).Length;
            Console.WriteLine(FormattableString.Invariant($"{seconds} s at 100 Hz, {length / 1e6:F1} MB, median of {Rounds} rounds, ms (least):"));
            var lines = 0;
            Told("reading the bytes and counting lines (the floor)", () => lines = File.ReadAllBytes(path).AsSpan().Count((byte)'\n'));
            LogReading? reading = null;
            Told("reading the log", () => reading = LogFile.Load([path]));
            Drive? drive = null;
            Told("clock, grid, axes", () => drive = Drive.Of(reading!.Log!));
            Trust? trust = null;
            Told("faults and verdicts", () => trust = Trust.Of(drive!));
            Told("strip", () => DriveStrip.Of(drive!));
            DriveEvents? events = null;
            Told("events: found, timed, sorted, measured", () => events = DriveEvents.Of(drive!, trust!));
            Told("comfort", () => DriveComfort.Of(drive!, trust!));
            Console.WriteLine(FormattableString.Invariant($"{events!.Events.Length} events at {events.Sites.Length} sites"));
            Console.WriteLine(FormattableString.Invariant(
                $"{lines} lines; {reading!.Log!.Tracks[0].Times.Length} samples; {drive!.Length:F0} s covered"));
            return 0;
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void Told(string what, Action work)
    {
        var times = new List<double>();
        for (var round = 0; round < Rounds; round++)
        {
            var start = Stopwatch.GetTimestamp();
            work();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        times.Sort();
        Console.WriteLine(FormattableString.Invariant($"{what,-50} {times[Rounds / 2],8:F0} ({times[0]:F0})"));
    }

    // Every two and a half minutes a bump: each axle sets off a swing that dies out, the rear one later.
    private static double Swing(double t, double speed, double front, double rear)
    {
        return (front * Of(t % 150.0 - 40.0)) + (rear * Of((t % 150.0) - 40.0 - (2.7 / speed)));

        static double Of(double since) => since < 0.0 ? 0.0 : Math.Exp(-3.0 * since) * Math.Sin(2.0 * Math.PI * 1.3 * since);
    }

    private static string Text(int seconds)
    {
        var text = new StringBuilder(
            "seconds_elapsed,accelX (m/s²),accelY (m/s²),accelZ (m/s²),gyroX (rad/s),gyroY (rad/s),gyroZ (rad/s),latitude,longitude,speed (m/s)\n");
        for (var i = 0; i < 100 * seconds; i++)
        {
            var t = i / 100.0;
            var (noise, other) = SplitMix.Normals(1, 2UL * (ulong)i);
            var speed = 12.0 + (4.0 * Math.Sin(t / 9.0));
            var yaw = 0.1 * Math.Sin(t / 5.0);
            text.Append(
                CultureInfo.InvariantCulture,
                $"{t + (3e-4 * noise):F9},{(4.0 / 9.0 * Math.Cos(t / 9.0)) + (0.1 * noise):F9},{(speed * yaw) + (0.1 * other):F9},"
                + $"{9.81 + (0.3 * noise) + Swing(t, speed, 3.0, 3.0):F9},{0.02 * noise:F9},{(0.01 * other) + Swing(t, speed, -0.25, 0.25):F9},"
                + $"{yaw + (0.01 * noise):F9},48.1234567,11.1234567,"
                + $"{12.0 + (4.0 * Math.Sin(Math.Floor(t) / 9.0)):F4}\n");
        }

        return text.ToString();
    }
}
