using System.CommandLine;
using System.CommandLine.Help;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>The command line as a whole.</summary>
internal static class Root
{
    /// <summary>Understood by every command that draws, and by no other.</summary>
    public static Option<bool> Column { get; } =
        new("--column") { Description = "Make the picture fit one column (84 mm) instead of the page's width (174 mm)." };

    // A plain command instead of the library's root command: that one calls itself after the file that was started.
    public static Command Of(Streams streams) => new(
        "heaveline",
        """
        Heaveline judges, explains and tunes how road vehicles ride: heave, pitch and roll from garage measurements.

        Exit codes: 0 done, 1 input refused, 2 wrong usage, 3 could not be computed. 4 is a fault of the program itself.
        Start with: heaveline describe examples/garage/fern-saloon.yaml
        """)
    {
        new HelpOption(),
        new VersionOption(),
        NewCommand.Of(streams),
        CheckCommand.Of(streams),
        FindCommand.Of(streams),
        PartsCommand.Of(streams),
        StudyCommand.Of(streams, DescribeStudy.Question),
        StudyCommand.Of(streams, PassStudy.Question, further: [PassFiles.Film, PassFiles.Live]),
        StudyCommand.Of(streams, CompareStudy.Question),
        StudyCommand.Of(streams, RoadStudy.Question),
        StudyCommand.Of(streams, RideStudy.Question),
        StudyCommand.Of(streams, RuleStudy.Question, runsMany: true),
        StudyCommand.Of(streams, WhyStudy.Question, runsMany: true),
        StudyCommand.Of(streams, CureStudy.Question, runsMany: true),
        StudyCommand.Of(streams, ChooseStudy.Question, runsMany: true),
        StudyCommand.Of(streams, DoubtStudy.Question, runsMany: true),
        StudyCommand.Of(streams, CostStudy.Question),
        StudyCommand.Of(streams, YearsStudy.Question, runsMany: true),
        StudyCommand.Of(streams, ToleranceStudy.Question, runsMany: true),
        StudyCommand.Of(streams, LinkStudy.Question),
        StudyCommand.Of(streams, DriveStudy.Question),
        StudyCommand.Of(streams, TiesStudy.Question),
        StudyCommand.Of(streams, FilmStudy.Question),
        StudyCommand.Of(streams, FlashStudy.Question),
        StudyCommand.Of(streams, ProveStudy.Question),
        StudyCommand.Of(streams, PlanStudy.Question),
        StudyCommand.Of(streams, PlankStudy.Question),
        WorksheetCommand.Of(streams),
        HelpOutCommand.Of(streams),
        StandByCommand.Of(streams),
        ServeCommand.Of(streams),
        ReportCommand.Of(streams),
    };
}
