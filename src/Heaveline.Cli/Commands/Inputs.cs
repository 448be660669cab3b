using Heaveline.Cars;
using Heaveline.Cli.Output;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Turns the words of a command line into cars, loads, roads and speeds, or stops with what is wrong.</summary>
internal static class Inputs
{
    public static Car Car(string path, Streams streams) => CarReading(path, streams).Car!;

    /// <summary>A car with the texts that it was read from; stops where there is none.</summary>
    public static CarReading CarReading(string path, Streams streams)
    {
        var reading = CarFile.Load(path);
        if (reading.Warnings.Count > 0 || reading.Refusals.Count > 0)
        {
            streams.Remarks.WriteLine(reading.Format());
        }

        return reading.Car is not null ? reading : throw new Stopped($"heaveline: {path} is refused for {Count(reading.Refusals.Count, "reason")}.", ExitCode.Refused);
    }

    public static LoadState Load(Car car, string? name)
    {
        if (name is null || name == LoadState.Reference.Name)
        {
            return LoadState.Reference;
        }

        return car.LoadStates.FirstOrDefault(l => l.Name == name)
            ?? throw new Stopped($"heaveline: '{name}' is no load state of {car.Name}; it has: {string.Join(", ", car.LoadStates.Select(l => l.Name).Prepend(LoadState.Reference.Name))}.", ExitCode.Refused);
    }

    public static Seat Seat(Car car, string name) =>
        car.Seats.FirstOrDefault(s => s.Name == name)
        ?? throw new Stopped($"heaveline: '{name}' is no seat of {car.Name}; it has: {string.Join(", ", car.Seats.Select(s => s.Name))}.", ExitCode.Refused);

    public static IReadOnlyList<LoadState> AllLoads(Car car) => [LoadState.Reference, .. car.LoadStates];

    public static Road Road(string words, Streams streams) => RoadReading(words, streams).Road!;

    /// <summary>A road with the texts that it was read from; stops where there is none.</summary>
    public static RoadReading RoadReading(string words, Streams streams)
    {
        var reading = NamedRoads.Find(words);
        if (reading.Warnings.Count > 0 || reading.Refusals.Count > 0)
        {
            streams.Remarks.WriteLine(reading.Format());
        }

        return reading.Road is not null ? reading : throw new Stopped($"heaveline: the road '{words}' was refused.", ExitCode.Refused);
    }

    /// <summary>A quantity from the command line, in SI units with its doubt.</summary>
    public static Amount<TDimension> Amount<TDimension>(string what, string words, string example)
        where TDimension : struct, IDimension
    {
        var parsed = QuantityText.Parse<TDimension>(words);
        return parsed.IsRead
            ? parsed.Amount
            : throw new Stopped($"heaveline: {what} '{words}': {parsed.Refusal!.Message} {parsed.Refusal.Advice}{(parsed.Refusal.Advice.Contains(example.Split(' ')[^1], StringComparison.Ordinal) ? "" : $" Write it as {example}.")}", ExitCode.WrongUsage);
    }

    public static double Speed(string words) => Amount<Velocity>("speed", words, "40 km/h").Si;

    /// <summary>Several speeds, each once, rising.</summary>
    public static IReadOnlyList<double> Speeds(string words) => [.. words.Split(',', StringSplitOptions.TrimEntries).Select(Speed).Distinct().Order()];

    /// <summary>Stops before any work is done for a picture that could not be written in the end.</summary>
    public static void Picture(string? file)
    {
        if (file is not null && Path.GetExtension(file).ToLowerInvariant() is not (".svg" or ".png" or ".pdf"))
        {
            throw new Stopped($"heaveline: --figure '{file}': the name must end in .svg, .png or .pdf.", ExitCode.WrongUsage);
        }
    }

    public static RideModel Model(Car car, LoadState load) => RideModel.Of(car, load);

    private static string Count(int n, string what) => n == 1 ? $"1 {what}" : $"{n} {what}s";
}
