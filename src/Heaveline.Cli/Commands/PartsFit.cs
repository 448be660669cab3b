using System.CommandLine;
using System.Text;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Parts;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>Chosen parts put into a car: what they cost, what must be said of them, and the variant that has them.</summary>
internal static class PartsFit
{
    public static Command Of(Streams streams)
    {
        var lists = new Argument<string[]>("FILE") { Description = "Lists of parts, sheets of springs.", Arity = ArgumentArity.OneOrMore };
        var car = new Option<string>("--car") { Description = "The car's file.", HelpName = "CAR", Required = true };
        var put = new Option<string[]>("--put")
        {
            Description = "A place and a part as it is set: \"rear damper: Wren W3 at click 6\". Once for each place.",
            HelpName = "TEXT",
            Required = true,
        };
        var to = new Option<string?>("--to")
        {
            Description = "The variant to write, beside the car's file, ending in .yaml; it must not be there yet.", HelpName = "FILE",
        };
        var command = new Command(
            "fit",
            """
            Put chosen parts into a car: what they cost together, what packing they need, what must be said of them, and with --to the variant that
            has them, to be driven as any other.

            Example:
              heaveline parts fit examples/parts/village-autumn.yaml --car examples/garage/fern-saloon-measured.yaml --put "rear spring: Larch R-480"
            """)
        {
            lists,
            car,
            put,
            to,
        };
        command.SetAction(r => Run(streams, r.GetValue(lists)!, r.GetValue(car)!, r.GetValue(put)!, r.GetValue(to)));
        return command;
    }

    private static int Run(Streams streams, string[] lists, string carFile, string[] puts, string? to)
    {
        var reading = CarFile.Load(carFile);
        Say(streams, reading.Format());
        List<(string File, PartsList List)> read = [];
        foreach (var file in lists)
        {
            var list = PartsFile.Load(file);
            Say(streams, list.Format());
            read.Add((file, list.Value ?? throw new Stopped($"heaveline: {file} is refused: see above.", ExitCode.Refused)));
        }

        PartsList[] all = [.. read.Select(one => one.List)];
        if (PartsLists.Twice(all) is { } same)
        {
            string[] files =
                [.. read.Where(one => one.List.Name == same.List && one.List.Parts.Any(part => part.Name == same.Part)).Select(one => one.File)];
            throw new Stopped(
                $"heaveline: {same.Part} stands in {files[0]} and in {files[^1]}; a part's name must tell which one it is. Take one out, or give the "
                + "lists different names.",
                ExitCode.Refused);
        }

        // Of one name in lists of different names they are told apart as the choice of parts tells them.
        List<PartOption> options = [.. PartsLists.Apart(all).SelectMany(list => list.Parts).SelectMany(part => part.Options)];
        var car = reading.Value ?? throw new Stopped($"heaveline: {carFile} is refused: see above.", ExitCode.Refused);
        FittedPart[] parts = [.. puts.Select(text => Put(text, options))];
        if (parts.GroupBy(part => part.Place).FirstOrDefault(same => same.Count() > 1) is { } twice)
        {
            throw new Stopped($"heaveline: --put: two parts at the {twice.Key.Name()}; left and right get the same one.", ExitCode.WrongUsage);
        }

        if (Fitting.Of(car, parts) is not Fitted fitted)
        {
            var reasons = Fitting.Misfits(car, parts).Select(misfit => $"heaveline: {misfit.Words} {misfit.Advice}");
            throw new Stopped(string.Join('\n', reasons), ExitCode.Refused);
        }

        foreach (var line in fitted.Costs)
        {
            streams.Results.WriteLine(line.Total is { } total
                ? $"{FirstLetter.Raised(line.Place.Name())}: {line.Part}, {total}"
                    + (line.Fitting is { IsNone: false } own ? $", {own} of it for fitting." : ".")
                : $"{FirstLetter.Raised(line.Place.Name())}: {line.Part}, at a price that nobody gave.");
        }

        streams.Results.WriteLine(fitted.Cost is { } sum ? $"Together: {sum}." : "What they cost together cannot be said: a price is missing.");
        foreach (var remark in fitted.Remarks)
        {
            streams.Results.WriteLine(remark.Text);
        }

        streams.Results.WriteLine(Cautions.Short);
        if (to is not null)
        {
            Write(streams, FittedVariant.Of(fitted, reading, Path.GetFileNameWithoutExtension(to), Path.GetFileName(carFile)), carFile, to);
        }

        return ExitCode.Done;
    }

    private static FittedPart Put(string text, List<PartOption> options)
    {
        var (place, name) = text.Split(':', 2, StringSplitOptions.TrimEntries) is [var before, var after] ? (before, after) : ("", text);
        if (PartPlaces.Named(place) is not { } at)
        {
            var known = PartPlaces.All.Select(one => one.Name()).ToList();
            var near = NearestWord.Of(place, known) is { } word ? $" Did you mean {word}?" : "";
            throw new Stopped(
                $"heaveline: --put '{text}' names no place before its colon.{near} Places are {string.Join(", ", known)}.", ExitCode.WrongUsage);
        }

        return new FittedPart(at, PutNames.Find(text, at, name, options));
    }

    // A variant finds its base in its own folder, and nothing that is there is written over.
    private static void Write(Streams streams, string text, string carFile, string to)
    {
        if (!to.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || Path.GetFileNameWithoutExtension(to).Length == 0)
        {
            throw new Stopped($"heaveline: --to '{to}' does not end in .yaml, as variants do. Give it such a name.", ExitCode.WrongUsage);
        }

        if (Path.GetDirectoryName(Path.GetFullPath(to)) != Path.GetDirectoryName(Path.GetFullPath(carFile)))
        {
            throw new Stopped(
                $"heaveline: --to '{to}' does not lie beside '{carFile}', and a variant finds its car in its own folder.", ExitCode.WrongUsage);
        }

        try
        {
            if (!WholeFile.WriteNew(to, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text)))
            {
                throw new Stopped($"heaveline: '{to}' is there already and stays as it is. Give another name.", ExitCode.Refused);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Stopped($"heaveline: '{to}' was not written: {FileTrouble.Words(e)}", ExitCode.NotComputed);
        }

        streams.Results.WriteLine($"{to}: written. Then: heaveline cost {carFile} {to}");
    }

    private static void Say(Streams streams, string words)
    {
        if (words.Length > 0)
        {
            streams.Remarks.WriteLine(words);
        }
    }
}
