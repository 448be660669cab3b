using System.CommandLine;
using System.Globalization;
using Heaveline.Cars.Worksheets;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands.Worksheets;

/// <summary>A spring pressed on a scale.</summary>
internal static class SpringCommand
{
    public static Command Of(Streams streams)
    {
        var pair = new Option<string[]>("--pair") { Description = "Length of the spring and the force on it (or the scale's reading). Repeat it.", HelpName = "LENGTH,FORCE", Required = true };
        var at = new Option<string?>("--at") { Description = "A length at which to tell force and rate: where it is fitted, or at ride height.", HelpName = "LENGTH" };
        var json = Options.Json();
        var command = new Command(
            "spring",
            """
            A spring's rate from pairs of length and force: interval, free length, preload, one rate or two.

            Example:
              heaveline worksheet spring --pair "310 mm, 480 N" --pair "290 mm, 905 N" --pair "270 mm, 1310 N" --pair "250 mm, 1735 N" --at "255 mm"
            """)
        {
            pair,
            at,
            json,
        };
        command.SetAction(r =>
        {
            (Amount<Length> Length, Amount<Force> Force)[] pairs = [.. r.GetValue(pair)!.Select(words => Typed.Parts(pair.Name, words, 2)).Select(p => (Typed.Amount<Length>(pair.Name, p[0]), Typed.Force(pair.Name, p[1])))];
            return Run(streams, [.. pairs.Select(p => p.Length)], [.. pairs.Select(p => p.Force)], Typed.Maybe<Length>(at.Name, r.GetValue(at)), r.GetValue(json));
        });
        return command;
    }

    private static int Run(Streams streams, Amount<Length>[] lengths, Amount<Force>[] forces, Amount<Length>? at, bool json)
    {
        var sheet = SpringSheet.Of(lengths, forces);
        var text = new SheetText("spring", "Spring")
            .Add("rate", "rate of a straight line through all", "N/mm", "F2", sheet.Rate)
            .Add("free-length", "length without force by that line", "mm", "F1", sheet.FreeLength)
            .Add("straightness", "straightness R²", "–", "F5", sheet.Straightness)
            .Add("scatter", "scatter about the chosen shape", "N", "F1", sheet.Scatter);
        if (sheet.Shape != SpringShape.Straight)
        {
            text.Add("rate-long", "rate at the longest length", "N/mm", "F2", sheet.EndRates[0])
                .Add("rate-short", "rate at the shortest length", "N/mm", "F2", sheet.EndRates[1])
                .Add("crossover-length", "crossover at length", "mm", "F1", 1e3 * sheet.CrossoverLength)
                .Add("crossover-force", "crossover at force", "N", "F0", sheet.CrossoverForce);
        }

        if (at is { } place)
        {
            text.Add("force-at", "force at the length asked for", "N", "F0", sheet.ForceAt(place.Si))
                .Add("rate-at", "rate there", "N/mm", "F2", 1e-3 * sheet.RateAt(place.Si));
        }

        text.Paste("spring:", sheet.Shape == SpringShape.Straight ? $"  rate: {SheetText.Amount(sheet.Rate, "N/mm")}" : $"  table: [{string.Join(", ", Rows([.. lengths.Select(l => l.Si)], [.. forces.Select(f => f.Si)]))}]");
        return text.Write(streams, sheet.Notes, json);
    }

    // Repeats at one length make one row: a table must rise.
    private static IEnumerable<string> Rows(double[] lengths, double[] forces)
    {
        var longest = lengths.Max();
        return lengths.Zip(forces).GroupBy(p => p.First).OrderByDescending(g => g.Key)
            .Select(g => string.Create(CultureInfo.InvariantCulture, $"[{1e3 * (longest - g.Key):0.##} mm, {g.Average(p => p.Second):0.#} N]"));
    }
}
