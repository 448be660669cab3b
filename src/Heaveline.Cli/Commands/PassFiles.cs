using Heaveline.Figures;
using Heaveline.Press;

namespace Heaveline.Cli.Commands;

/// <summary>Files of a pass that move: the film, and the page that stands by itself.</summary>
internal static class PassFiles
{
    public static FurtherFile<PassAnswer> Film { get; } = new(
        new("--animation")
        {
            Description = "Write the pass as a moving picture to FILE, an animated WebP: the car from its side, its pitch below it.",
            HelpName = "FILE",
        },
        ".webp",
        (_, answer, units, stop) => Webp.Of(PassFilm.Of(answer.Pass, answer.Measures).Select(frame => frame.In(units)), PassFilm.Shown, stop));

    public static FurtherFile<PassAnswer> Live { get; } = new(
        new("--live")
        {
            Description = "Write the pass with its sliders to FILE, one HTML file that opens without Heaveline and without a network.",
            HelpName = "FILE",
        },
        ".html",
        LiveFiles.Of)
    {
        Leaves = LiveFiles.Leave,
    };
}
