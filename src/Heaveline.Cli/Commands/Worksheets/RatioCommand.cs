using System.CommandLine;
using System.Globalization;
using Heaveline.Cars.Worksheets;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>A wheel jacked through its travel.</summary>
internal static class RatioCommand
{
    public static Command Of(Streams streams)
    {
        var stop = new Option<string[]>("--stop") { Description = "Wheel travel and spring (or damper) travel from the state described, bump positive. Repeat it.", HelpName = "WHEEL,ELEMENT", Required = true };
        var json = Options.Json();
        var command = new Command(
            "ratio",
            """
            A motion ratio from a sweep of wheel and spring travels, with its interval.

            Example:
              heaveline worksheet ratio --stop "-40 mm, -24.3 mm" --stop "-20 mm, -12.2 mm" --stop "0 mm, 0 mm" --stop "20 mm, 12.5 mm" --stop "40 mm, 25.3 mm"
            """)
        {
            stop,
            json,
        };
        command.SetAction(r =>
        {
            (Amount<Length> Wheel, Amount<Length> Element)[] stops = [.. r.GetValue(stop)!.Select(words => Typed.Parts(stop.Name, words, 2)).Select(p => (Typed.Amount<Length>(stop.Name, p[0]), Typed.Amount<Length>(stop.Name, p[1]))).OrderBy(p => p.Item1.Si)];
            var sheet = RatioSheet.Of([.. stops.Select(p => p.Wheel)], [.. stops.Select(p => p.Element)]);
            return new SheetText("ratio", "Motion ratio")
                .Add("ratio", "element travel per wheel travel", "", "F3", sheet.Ratio.AtReference)
                .Add("change", "its change per metre of bump", "1/m", "F2", sheet.Ratio.PerTravel)
                .Add("least", "least over the travel measured", "–", "F3", sheet.Range[0])
                .Add("greatest", "greatest over the travel measured", "–", "F3", sheet.Range[1])
                .Add("worst-miss", "largest miss of the curve", "mm", "F2", 1e3 * sheet.WorstMiss)
                .Paste($"sweep: [{string.Join(", ", stops.Select(p => string.Create(CultureInfo.InvariantCulture, $"[{1e3 * p.Wheel.Si:0.##} mm, {1e3 * p.Element.Si:0.##} mm]")))}]")
                .Write(streams, sheet.Notes, r.GetValue(json));
        });
        return command;
    }
}
