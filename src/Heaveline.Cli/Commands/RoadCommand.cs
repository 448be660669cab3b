using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Figures;
using Heaveline.Files;
using Heaveline.Files.Roads;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>What a road is like, or a random road of a class made anew.</summary>
internal static class RoadCommand
{
    public static Command Of(Streams streams)
    {
        var road = new Argument<string?>("ROAD") { Description = "A road file, a measured profile, or a road's short name; nothing with --random, or to list the short names.", Arity = ArgumentArity.ZeroOrOne };
        var random = new Option<string?>("--random") { Description = "Make a random road of a class A to H (ISO 8608).", HelpName = "CLASS" };
        var length = new Option<string>("--length") { Description = "Length of the random road.", HelpName = "LENGTH", DefaultValueFactory = _ => "500 m" };
        var track = new Option<string>("--track") { Description = "Distance between its wheel tracks; 0 m for one track.", HelpName = "TRACK", DefaultValueFactory = _ => "1.5 m" };
        var seed = new Option<ulong>("--seed") { Description = "Another seed, another road of the same kind.", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };
        var write = new Option<string?>("--write") { Description = "Write the heights to FILE as CSV, to be used as a road.", HelpName = "FILE" };
        var json = Options.Json();
        var figure = Options.Figure();
        var command = new Command(
            "road",
            """
            Say how rough a road is: heights, spectrum, class with its interval, roughness index. Or make a random road of a class.

            Examples:
              heaveline road examples/roads/country-lane.yaml --figure lane.pdf
              heaveline road --random C --length "1 km" --seed 7 --write random-c.csv
              heaveline road
            """)
        {
            road,
            random,
            length,
            track,
            seed,
            write,
            json,
            figure,
        };
        command.SetAction(r => Run(
            streams,
            r.GetValue(road),
            r.GetValue(random) is { } letter ? Make(letter, r.GetValue(length)!, r.GetValue(track)!, r.GetValue(seed)) : null,
            r.GetValue(write),
            r.GetValue(json),
            r.GetValue(figure)));
        return command;
    }

    private static int Run(Streams streams, string? words, Road? made, string? write, bool json, string? figure)
    {
        if (words is null && made is null)
        {
            List(streams, json);
            return ExitCode.Done;
        }

        Inputs.Picture(figure);
        if (words is not null && made is not null)
        {
            throw new Stopped("heaveline: give a road, or --random for a new one, not both.", ExitCode.WrongUsage);
        }

        var road = made ?? Inputs.Road(words!, streams);
        var one = ReferenceEquals(road.Left, road.Right);
        var left = RoadRoughness.Of(road.Left);
        var right = one ? null : RoadRoughness.Of(road.Right);
        Say(streams, road, right is null ? [left] : [left, right], json);
        if (write is not null)
        {
            WholeFile.Write(write, HeightsCsv.Of(road));
        }

        if (figure is not null)
        {
            Pictures.Write(streams, RoadFigure.Of(road, left, right), figure);
        }

        return ExitCode.Done;
    }

    private static void List(Streams streams, bool json)
    {
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("road", [], new JsonObject
            {
                ["roads"] = new JsonArray([.. NamedRoads.All.Select(r => (JsonNode)new JsonObject { ["name"] = r.Key, ["what"] = r.Value.Caption })]),
            }));
            return;
        }

        var width = NamedRoads.All.Keys.Max(name => name.Length);
        foreach (var (name, road) in NamedRoads.All)
        {
            streams.Results.WriteLine($"{name.PadRight(width)}  {road.Caption}");
        }

        streams.Results.WriteLine();
        streams.Results.WriteLine("Give one of these names after --road, or the path of a road file or of a measured profile (CSV).");
    }

    private static void Say(Streams streams, Road road, IReadOnlyList<RoadRoughness> tracks, bool json)
    {
        var table = RoadTable.Of(road, tracks);
        string[] refused = [.. tracks.SelectMany(t => t.Refused).Distinct()];
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("road", [table], new JsonObject { ["road"] = road.Caption, ["refused"] = FactJson.Texts(refused) }));
            return;
        }

        streams.Results.WriteLine(road.Caption);
        streams.Results.WriteLine();
        streams.Results.Write(FactText.Of(table));
        foreach (var sentence in refused)
        {
            streams.Results.WriteLine(sentence);
        }
    }

    private static Road Make(string letter, string length, string track, ulong seed)
    {
        return Road.From(new RandomRoad
        {
            Spectrum = RoadSpectrum.Of(Class(letter)),
            Track = Inputs.Amount<Length>("track", track, "1.5 m"),
            Length = Inputs.Amount<Length>("length", length, "500 m"),
            Seed = seed,
        });
    }

    private static RoadClass Class(string letter) =>
        RoadClass.All.FirstOrDefault(c => string.Equals(c.Letter.ToString(), letter, StringComparison.OrdinalIgnoreCase))
        ?? throw new Stopped($"heaveline: '{letter}' is no road class; there are A to H, A the smoothest.", ExitCode.WrongUsage);
}
