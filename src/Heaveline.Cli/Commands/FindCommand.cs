using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Files.Garages;
using Heaveline.Finding;
using Heaveline.Measures;

namespace Heaveline.Cli.Commands;

/// <summary>Finds files of a garage by their words, kinds and numbers.</summary>
internal static class FindCommand
{
    private static readonly GarageKind[] Kinds =
        [.. Enum.GetValues<GarageKind>().Where(kind => kind is not (GarageKind.Unknown or GarageKind.Choices))];

    public static Command Of(Streams streams)
    {
        var folder = new Argument<string>("FOLDER") { Description = "The garage." };
        var words = new Argument<string[]>("WORDS")
        {
            Description = "Beginnings of words that all stand in a file's name, in what it is called, in its kind or in its text.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var kind = new Option<string[]>("--kind")
        {
            Description = $"Look among one kind alone ({string.Join(", ", Kinds.Select(GarageKindWords.Of))}); may be given more than once.",
            HelpName = "KIND",
        };
        var where = new Option<string[]>("--where")
        {
            Description = "A number that a car keeps standing under one of its loads, at least or at most so much in the unit that it is shown in "
                + "(\"ratio at most 1\"); may be given more than once, and all hold under one load.",
            HelpName = "BOUND",
        };
        var json = Options.Json();
        var command = new Command(
            "find",
            """
            Find cars, variants, roads, drives, sheets and lists of parts of a garage by the words in their files and by the numbers of standing cars.
            What the files say is kept in .heaveline/index.db inside the garage, brought up to date each time; it may be deleted.

            Examples:
              heaveline find examples/garage weighbridge
              heaveline find examples/garage --kind car --where "ratio at most 1" --where "mass at least 1300 kg"
            """)
        {
            folder,
            words,
            kind,
            where,
            json,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams, r.GetValue(folder)!, r.GetValue(words) ?? [], r.GetValue(kind) ?? [], r.GetValue(where) ?? [], r.GetValue(json), stop)));
        return command;
    }

    private static int Run(Streams streams, string folder, string[] words, string[] kinds, string[] where, bool json, CancellationToken stop)
    {
        var wrong = new List<string>();
        var query = new FindQuery
        {
            Words = [.. words.SelectMany(w => w.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))],
            Kinds = [.. kinds.SelectMany(word => Kind(word, wrong))],
            Bounds = [.. where.Select(text => Bound(text, wrong)).OfType<MeasureBound>()],
        };
        if (wrong.Count > 0)
        {
            wrong.ForEach(streams.Remarks.WriteLine);
            return ExitCode.WrongUsage;
        }

        if (!Directory.Exists(folder))
        {
            streams.Remarks.WriteLine($"heaveline: there is no folder '{folder}'. Give the folder of a garage.");
            return ExitCode.Refused;
        }

        var garage = new Garage(folder);
        if (!GarageFinder.IsAny(garage))
        {
            streams.Remarks.WriteLine($"heaveline: '{folder}' is no garage: no car, variant, road, drive, sheet of ties or list of parts lies at "
                + "its top or one level below. Give the folder that they lie in.");
            return ExitCode.Refused;
        }

        var found = GarageFinder.Of(garage, query, cancellation: stop);
        if (json)
        {
            streams.Results.WriteLine(Json(found.Files, found.Update));
        }
        else
        {
            Say(streams, found.Files, query, found.Update);
        }

        if (found.Remark.Length > 0)
        {
            streams.Remarks.WriteLine($"heaveline: {found.Remark}");
        }

        return ExitCode.Done;
    }

    private static IEnumerable<GarageKind> Kind(string word, List<string> wrong)
    {
        var found = Kinds.Where(kind => GarageKindWords.Of(kind) is var one
            && (one == word || one + "s" == word || one.Replace("list", "lists", StringComparison.Ordinal) == word)).ToArray();
        if (found.Length == 0)
        {
            wrong.Add($"heaveline: '{word}' is no kind of file; there are {string.Join(", ", Kinds.Select(GarageKindWords.Of))}.");
        }

        return found;
    }

    private static MeasureBound? Bound(string text, List<string> wrong)
    {
        var (bound, problem) = MeasureBoundText.Read(text, GarageIndex.Numbers);
        if (bound is null)
        {
            wrong.Add($"heaveline: --where: {problem}");
        }

        return bound;
    }

    private static void Say(Streams streams, IReadOnlyList<FoundFile> found, FindQuery query, IndexUpdate update)
    {
        Measure[] shown = query.Bounds.Count > 0 ? [.. query.Bounds.Select(b => b.Measure).Distinct()] : [AxleCatalogue.FrequencyRatio];
        foreach (var file in found)
        {
            streams.Results.WriteLine($"{file.Title}: {GarageKindWords.Of(file.Kind)}, {file.Name}{(file.Of.Length > 0 ? $", of {file.Of}" : "")}");
            foreach (var measure in shown)
            {
                var numbers = file.Numbers.Where(n => n.Key == measure.Key).ToArray();
                if (numbers.Length > 0)
                {
                    var words = numbers.Select(n => FoundWords.Of(file, measure, n));
                    streams.Results.WriteLine($"  {measure.Name}: {string.Join(", ", words)}");
                }
            }

            if (query.Words.Count > 0 && file.Place.Length > 0)
            {
                streams.Results.WriteLine($"  {file.Place}");
            }

            if (file.Problem.Length > 0)
            {
                streams.Results.WriteLine($"  cannot be used: {file.Problem}");
            }
        }

        var all = update.Read + update.Kept;
        streams.Results.WriteLine(found.Count > 0
            ? $"{found.Count} of {all} {(all == 1 ? "file" : "files")}."
            : $"Nothing is found among {all} {(all == 1 ? "file" : "files")}: every word given must begin one of a file's words, and every bound "
                + "hold under one load.");
    }

    private static string Json(IReadOnlyList<FoundFile> found, IndexUpdate update) => FactJson.Of("find", [], new JsonObject
    {
        ["files"] = update.Read + update.Kept,
        ["read"] = update.Read,
        ["found"] = new JsonArray([.. found.Select(file => (JsonNode)new JsonObject
        {
            ["file"] = file.Name,
            ["kind"] = GarageKindWords.Of(file.Kind),
            ["title"] = file.Title,
            ["of"] = file.Of.Length > 0 ? file.Of : null,
            ["problem"] = file.Problem.Length > 0 ? file.Problem : null,
            ["numbers"] = new JsonArray([.. file.Numbers.GroupBy(n => n.Load).Select(load => (JsonNode)new JsonObject(
                load.Select(n => KeyValuePair.Create(n.Key, (JsonNode?)n.Value)).Prepend(KeyValuePair.Create("load", (JsonNode?)load.Key))))]),
        })]),
    });
}
