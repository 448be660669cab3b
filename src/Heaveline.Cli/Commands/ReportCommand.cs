using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Cars;
using Heaveline.Files.Reporting;
using Heaveline.Press;

namespace Heaveline.Cli.Commands;

/// <summary>A report of chosen parts as one file to publish or to print.</summary>
internal static class ReportCommand
{
    public static Command Of(Streams streams)
    {
        var cars = new Argument<string[]>("CAR") { Description = "One to five car files or variants. The first is what the others are held against; causes, doubts and the rule are of it.", Arity = new ArgumentArity(1, 5) };
        var road = Options.Road();
        var speed = new Option<string>("--speed") { Description = "Speed of the passes, the causes and the doubts.", HelpName = "SPEED", DefaultValueFactory = _ => ReportAsked.UsualSpeed };
        var speeds = new Option<string>("--speeds") { Description = "Speeds of the comparison and the ride, with commas between.", HelpName = "SPEEDS", DefaultValueFactory = _ => ReportAsked.UsualSpeeds };
        var load = Options.Load();
        var roadClass = new Option<string>("--class") { Description = "Class of the random road, A to H (ISO 8608).", HelpName = "CLASS", DefaultValueFactory = _ => ReportAsked.UsualClass };
        var rule = new Option<string>("--rule") { Description = $"Which rule of the trade is mapped: {string.Join(", ", TradeRule.Words)}.", HelpName = "RULE", DefaultValueFactory = _ => ReportAsked.UsualRule };
        rule.AcceptOnlyFromAmong([.. TradeRule.Words]);
        var samples = new Option<int>("--samples") { Description = "How many cars to draw within the doubts, 10 to 1000000.", HelpName = "NUMBER", DefaultValueFactory = _ => ReportAsked.UsualSamples };
        var seed = new Option<ulong>("--seed") { Description = "Seed of those draws.", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };
        var parts = new Option<string?>("--parts")
        {
            Description = $"What to include, in order, with commas between: {string.Join(", ", ReportAsked.Words)}; or all. Without it: {ReportAsked.UsualForOne} for one car, {ReportAsked.UsualForSeveral} for several. Cautions, sources and how to make it again are always there.",
            HelpName = "PARTS",
        };
        var title = new Option<string?>("--title") { Description = "Title. Without it: the cars' names.", HelpName = "TEXT" };
        var author = new Option<string>("--author") { Description = "Who made it.", HelpName = "TEXT", DefaultValueFactory = _ => "" };
        var date = new Option<string>("--date") { Description = "The day it is of, as you want it printed. Nothing is filled in.", HelpName = "TEXT", DefaultValueFactory = _ => "" };
        var paper = new Option<string>("--paper") { Description = "Sheet of a PDF: a4 or letter.", HelpName = "PAPER", DefaultValueFactory = _ => ReportAsked.UsualPaper };
        paper.AcceptOnlyFromAmong([.. ReportAsked.Papers]);
        var to = new Option<string>("--out") { Description = "The file to write: .html (one file that needs nothing else, for screen, phone and print) or .pdf.", HelpName = "FILE", Required = true };
        var command = new Command(
            "report",
            """
            Write a report: the car at every load, modes, passes in figures and words, comparison, ride, rule, causes, doubts, price; with cautions, sources, and the texts and the command that make it again.

            Examples:
              heaveline report examples/garage/fern-saloon.yaml --load "four up with luggage" --speed "40 km/h" --out fern.html
              heaveline report examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --parts car,compare,cost --author "A. Fern" --date "1 May 2026" --out cure.pdf
            """)
        {
            cars,
            road,
            speed,
            speeds,
            load,
            roadClass,
            rule,
            samples,
            seed,
            parts,
            title,
            author,
            date,
            paper,
            to,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams,
            r.GetValue(cars)!,
            new ReportAsked
            {
                Road = r.GetValue(road)!,
                Speed = r.GetValue(speed)!,
                Speeds = r.GetValue(speeds)!,
                Load = r.GetValue(load),
                Class = r.GetValue(roadClass)!,
                Rule = r.GetValue(rule)!,
                Samples = r.GetValue(samples),
                Seed = r.GetValue(seed),
                Parts = r.GetValue(parts),
                Title = r.GetValue(title),
                Author = r.GetValue(author)!,
                Date = r.GetValue(date)!,
                Paper = r.GetValue(paper)!,
                Out = r.GetValue(to)!,
                Program = $"Heaveline {Release.Version}",
            },
            stop)));
        return command;
    }

    private static int Run(Streams streams, string[] paths, ReportAsked asked, CancellationToken stop)
    {
        if (Path.GetExtension(asked.Out).ToLowerInvariant() is not (".html" or ".pdf"))
        {
            throw new Stopped($"heaveline: --out '{asked.Out}': the name must end in .html or .pdf.", ExitCode.WrongUsage);
        }

        List<CarReading> cars = [.. paths.Select(path => Inputs.CarReading(path, streams))];
        var reading = asked.Read(cars, Inputs.RoadReading(asked.Road, streams), Environment.ProcessorCount);
        if (reading.Choices is not { } choices)
        {
            // All of it is said, and the words weigh more than the files: they are wrong whatever the files say.
            var said = string.Join('\n', reading.Objections.Select(o => $"heaveline: {(o.Choice == "car" ? "" : $"--{o.Choice}: ")}{o.Sentence}"));
            throw new Stopped(said, reading.Objections.Any(o => o.IsUsage) ? ExitCode.WrongUsage : ExitCode.Refused);
        }

        Report report;
        using (var progress = new Progress(streams, "parts", choices.Parts.Length))
        {
            report = Report.From(choices, progress, stop);
        }

        ReportFile.Write(report, asked.Out, asked.Paper == "letter" ? PaperSize.Letter : PaperSize.A4);
        streams.Results.WriteLine($"{report.Title}: {report.Parts.Length} parts, written to {asked.Out}.");
        return ExitCode.Done;
    }
}
