using System.CommandLine;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>Garage measurements worked out: each gives a result, its doubt and the lines for a car file.</summary>
internal static class WorksheetCommand
{
    public static Command Of(Streams streams) => new(
        "worksheet",
        """
        Work out a garage measurement: result, doubt, and the lines to paste into a car file.

        Examples:
          heaveline worksheet weigh --round "381 kg, 362 kg, 311 kg, 306 kg" --wheelbase "2.70 m" --track "1.52 m, 1.51 m"
          heaveline worksheet spring --pair "310 mm, 480 N" --pair "290 mm, 905 N" --pair "270 mm, 1310 N"
        """)
    {
        StudyCommand.Of(streams, WeighStudy.Question),
        StudyCommand.Of(streams, TiltStudy.Question),
        StudyCommand.Of(streams, SpringStudy.Question),
        StudyCommand.Of(streams, BounceStudy.Question),
        StudyCommand.Of(streams, DecayStudy.Question),
        StudyCommand.Of(streams, RatioStudy.Question),
        StudyCommand.Of(streams, WheelRateStudy.Question),
    };
}
