using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Studies;

namespace Heaveline.Bench;

/// <summary>
/// The kernel, Boost.odeint over one double and over eight, and the processor's peak, in turn in one run at the same work, errors
/// beside: "peers PROGRAM GARAGE", the program made of bench/peers/odeint_job.cpp.
/// </summary>
internal static class PeerRace
{
    private const int Rounds = 11;
    private const double Warm = 400.0;

    public static int Run(string program, string garage)
    {
        var job = new PeerJob([.. Enumerable.Range(0, 16).Select(k => RideModel.Of(Saloon.Of(1.0 + (0.01 * k))))]);
        var file = Path.Combine(Path.GetTempPath(), $"heaveline-job-{Environment.ProcessId}.bin");
        job.Write(file);
        var (single, twice) = (0.0, 0.0);
        var peer = new Dictionary<string, (double Pitch, double Load)>();
        List<PeerJob.Entrant> entrants =
        [
            Peer("Boost.odeint AB4, scalar", "scalar", 1), Peer("Boost.odeint AB4, eight doubles side by side, 512 bits", "simd", 8),
            job.Blocks<Lane256>("blocks, double, 256 bits"), job.Blocks<Lane512>("blocks, double, 512 bits"),
            job.Blocks<FloatLane256>("blocks, float, 256 bits"), job.Blocks<FloatLane512>("blocks, float, 512 bits"),
            .. Demo<Lane512>("double"), .. Demo<FloatLane512>("float"),
        ];
        // The runtime translates what is hot a second time, a while after it has seen it.
        foreach (var entrant in entrants)
        {
            for (var warm = 0.0; warm < Warm; warm += entrant.Milliseconds())
            {
            }
        }

        var times = entrants.Select(_ => new List<double>()).ToArray();
        for (var round = 0; round < Rounds; round++)
        {
            for (var i = 0; i < entrants.Count; i++)
            {
                times[i].Add(entrants[i].Milliseconds());
            }

            twice = Math.Max(twice, Number(Say("peak-double"), @"([\d.]+) GFLOP"));
            single = Math.Max(single, Number(Say("peak-float"), @"([\d.]+) GFLOP"));
        }

        File.Delete(file);
        var operations = job.Operations();
        var rates = times.Zip(entrants, (all, e) => 1e3 * e.Cars / all.Order().ElementAt(Rounds / 2)).ToArray();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{PeerJob.Steps} steps of 0.625 ms; {operations:F0} operations a step (counted; a multiply-add is two); peak of this core "
            + $"{twice:F1} GFLOP/s double, {single:F1} float; so the floor is {1e9 * twice / operations / PeerJob.Steps:F0} runs/s double, "
            + $"{1e9 * single / operations / PeerJob.Steps:F0} float\n"));
        Console.WriteLine(
            "| entrant | runs of 10 s a second and core | × scalar odeint | × SIMD odeint | share of the peak | pitch error | load error |");
        Console.WriteLine("|---|--:|--:|--:|--:|--:|--:|");
        for (var i = 0; i < entrants.Count; i++)
        {
            var (pitch, load) = entrants[i].Error();
            var share = operations * PeerJob.Steps * rates[i] / 1e9 / (entrants[i].Name.Contains("float", StringComparison.Ordinal) ? single : twice);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {entrants[i].Name} | {rates[i]:F0} | {rates[i] / rates[2]:F1} | {rates[i] / rates[3]:F2} | "
                + $"{(double.IsNaN(pitch) ? "" : $"{100.0 * share:F0} %")} | {Shown(pitch)} | {Shown(load)} |"));
        }

        return 0;

        // A demo car at the step of the job, with itself side by side: no exact run of these, whose laws are curved.
        IEnumerable<PeerJob.Entrant> Demo<T>(string precision)
            where T : unmanaged, ILane<T> =>
            from name in new[] { "fern-saloon", "tarn-off-roader", "plover-motorcycle" }
            let car = CarFile.Load(Path.Combine(garage, $"{name}.yaml")).Value!
            let model = RideModel.Of(car, LoadedCar.UsualLoad(car))
            select job.Other<T>($"demo {name}, blocks, {precision}, 512 bits", model);

        PeerJob.Entrant Peer(string name, string what, int cars) => new(
            name,
            cars,
            () =>
            {
                var said = Say(what);
                peer[what] = (Number(said, @"pitch error ([\d.e+-]+)"), Number(said, @"load error ([\d.e+-]+)"));
                return cars * Number(said, @"([\d.]+) ms per run");
            },
            () => peer[what]);

        static string Shown(double error) => double.IsNaN(error) ? "–" : error.ToString("E1", CultureInfo.InvariantCulture);

        string Say(string what)
        {
            using var process = Process.Start(new ProcessStartInfo(program, [file, what]) { RedirectStandardOutput = true })!;
            var said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return said;
        }

        static double Number(string said, string pattern) => Regex.Match(said, pattern) is { Success: true } match
            ? double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)
            : throw new InvalidOperationException($"The peer said: {said}");
    }
}
