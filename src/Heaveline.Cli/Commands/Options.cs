using System.CommandLine;

namespace Heaveline.Cli.Commands;

/// <summary>Options that several commands share, with one wording each.</summary>
internal static class Options
{
    public static Option<bool> Json() => new("--json") { Description = "Write the result as JSON for machines." };

    public static Option<string?> Figure() => new("--figure") { Description = "Write the picture to FILE: .svg, .png or .pdf.", HelpName = "FILE" };

    public static Option<string?> Csv() => new("--csv") { Description = "Write all traces over time to FILE.", HelpName = "FILE" };

    public static Option<string?> OneLoad() => new("--load") { Description = "One load state by its name in the car file. Without it: all of them.", HelpName = "NAME" };

    public static Option<string?> Load() => new("--load") { Description = "Load state by its name in the car file. Without it: as described.", HelpName = "NAME" };

    /// <summary>For commands whose intervals cost time: they are asked for.</summary>
    public static Option<bool> Doubt() => new("--doubt") { Description = "Also give every number's interval, by cars drawn within the stated doubts." };

    public static Option<int> Samples(int usual) => new("--samples") { Description = "How many cars to draw within the stated doubts, 10 to 1000000.", HelpName = "NUMBER", DefaultValueFactory = _ => usual };

    public static Option<ulong> Seed(string more = "") => new("--seed") { Description = $"Another seed, other draws; the same seed, the same.{more}", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };

    public static Option<string> Road() => new("--road")
    {
        Description = "A road file, or the name of a road that comes with Heaveline ('heaveline road' lists them).",
        HelpName = "ROAD",
        DefaultValueFactory = _ => "village-hump",
    };

    public static Option<bool> Certified() => new("--certified")
    {
        Description = "Run the exact event-driven solver instead of fixed steps (cars whose laws are straight between their kinks).",
    };
}
