using System.CommandLine;

namespace Heaveline.Cli.Commands;

/// <summary>Options that several commands share, with one wording each.</summary>
internal static class Options
{
    public static Option<bool> Json() => new("--json") { Description = "Write the result as JSON for machines." };

    public static Option<bool> All() => new("--all") { Description = "Print every number, not only the rows that matter most." };

    public static Option<string?> Figure() => new("--figure")
    {
        Description = "Write the picture to FILE: .svg, .png or .pdf; - is standard output (SVG). A name that ends in .outlines.svg "
            + "gives an SVG whose letters are outlines, for drawing programs that ignore its font.",
        HelpName = "FILE",
    };
}
