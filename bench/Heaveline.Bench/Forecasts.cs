using System.Collections.Concurrent;
using System.Globalization;
using Heaveline.Drives.Recovery;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Bench;

/// <summary>
/// Planted pairs of drives with a change between them: whether the forecast of the drive before holds what the change does on that drive's own road,
/// and agrees with what is measured. <c>forecasts [pairs [first]]</c>; a pair takes half a minute of a processor.
/// </summary>
internal static class Forecasts
{
    private const int AtOnce = 2;

    public static int Run(string[] args)
    {
        int Argument(int at, int otherwise) => args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : otherwise;
        var (count, first) = (Argument(0, 48), Argument(1, 0));
        Console.WriteLine(
            "| pair | car and load | change | road, m³ | lane | by | said, % | true, % | measured, % | holds the true "
            + "| agrees with the measured |");
        Console.WriteLine("|--:|---|---|--:|--:|---|---|--:|---|---|---|");
        var scores = new ConcurrentBag<(string By, bool Holds, bool? Agrees, double Off)>();
        Parallel.ForEach(
            Partitioner.Create(Enumerable.Range(first, count), EnumerablePartitionerOptions.NoBuffering),
            new ParallelOptions { MaxDegreeOfParallelism = AtOnce },
            number => Pair(new PlantedChange(number), scores));
        Console.WriteLine(
            "\n| forecast by | of | holds the true, % | agrees with the measured, % | off the true, points RMS |\n"
            + "|---|--:|--:|--:|--:|");
        foreach (var by in scores.GroupBy(s => s.By).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var scored = by.Where(s => s.Agrees is not null).ToList();
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {by.Key} | {by.Count()} | {100.0 * by.Count(s => s.Holds) / by.Count():F0} "
                + $"| {100.0 * scored.Count(s => s.Agrees == true) / Math.Max(scored.Count, 1):F0} "
                + $"| {100.0 * Math.Sqrt(by.Average(s => s.Off * s.Off)):F1} |"));
        }

        return 0;
    }

    private static void Pair(PlantedChange planted, ConcurrentBag<(string By, bool Holds, bool? Agrees, double Off)> scores)
    {
        var (was, now) = (planted.Drive(false), planted.Drive(true));
        var file = new LoadedCar(planted.File.Name, planted.File, planted.Load);
        var (before, after) = (planted.Read(was.Log, was.Plan) with { File = file }, planted.Read(now.Log, now.Plan));
        var asked = new ProveAsked
        {
            Before = was.Log,
            After = now.Log,
            OfBefore = before.Events.Settings,
            OfAfter = after.Events.Settings,
            Car = file,
            Change = planted.Changed,
        };
        var answer = ProveStudy.Of(asked, before, after, CancellationToken.None);
        if (answer.Forecast is not { } files || answer.CarOfForecast is not { } car)
        {
            Console.WriteLine($"| {planted.Number} | {Named(planted)} | none | | | | | |");
            return;
        }

        Row(car.IsBelieved ? "file" : "file, the drive's car not believed", files);
        if (car.IsBelieved && !planted.IsDrawn)
        {
            Row("factors", ProveStudy.Weighed(
                Forecast.Of(planted.Scaled, "factors", answer.Before.Drive, answer.Before.Events, car), answer.Main, answer.Matches));
        }

        void Row(string by, Forecast forecast)
        {
            var truth = planted.Truth(was);
            var crossings = was.Plan.Crossings;
            // The true changes, weighed as the forecast weighs its own.
            var real = forecast.Averaged(answer.Main.Result.Shares.ToDictionary(
                s => answer.Matches.All.Single(m => m.Name == s.Key).Before.Name, s => s.Value), pass =>
            {
                var onset = answer.Before.Events.Events.Single(e => e.Number == pass.Number).Onset;
                return truth[Enumerable.Range(0, truth.Length).MinBy(i => Math.Abs(crossings[i].Time - onset))];
            });
            var change = Math.Exp(real) - 1.0;
            var measured = answer.Main.Result.Pooled;
            var agrees = measured is null
                ? (bool?)null
                : forecast.Score(new Bracket(measured.Value, measured.Low, measured.High)).IsKept;
            var said = forecast.Headline;
            scores.Add((by, said.Holds(change), agrees, said.Value - change));
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {planted.Number} | {Named(planted)} | {by} | {100.0 * said.Value:F1} ({100.0 * said.Low:F1}…{100.0 * said.High:F1}) "
                + $"| {100.0 * change:F1} | {100.0 * measured?.Value:F1} ({100.0 * measured?.Low:F1}…{100.0 * measured?.High:F1}) "
                + $"| {(said.Holds(change) ? "yes" : "no")} | {(agrees is { } kept ? kept ? "yes" : "no" : "")} |"));
        }
    }

    private static string Named(PlantedChange planted) => string.Create(
        CultureInfo.InvariantCulture,
        $"{planted.File.Name}, {planted.Load.Name}{(planted.IsDrawn ? ", off its file" : "")} | {string.Join(" ", planted.Factors)} "
        + $"| {planted.Density:0e-0} | {planted.Lane}, × {planted.Speeds}");
}
