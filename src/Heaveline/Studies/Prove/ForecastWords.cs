using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Whether a forecast was kept, in words and for machines.</summary>
internal static class ForecastWords
{
    /// <summary>The sentence; where there is no forecast, why.</summary>
    public static IEnumerable<Sentence> Of(ProveAnswer answer)
    {
        var change = answer.Asked.Forecast!;
        if (answer.Forecast is not { } forecast)
        {
            var why = answer.CarOfForecast?.Refusals is [var first, ..] ? DriveCarWords.Together(first) : "the log does not bear a car.";
            yield return new("forecast", $"What {change} would do is not forecast: {why}");
        }
        else if (Score(answer, forecast) is not { } score)
        {
            yield return new("forecast", $"Forecast for {change}: {Bracket(Said(answer, forecast))}; there is nothing measured to hold it against.");
        }
        else
        {
            yield return new("forecast", $"The forecast for {change} was {(score.IsKept ? "kept" : "not kept")}: "
                + $"said {Bracket(score.Said)}, measured {Bracket(score.Measured)}.");
            yield return new("forecast-of", (answer.Asked.Change is not null
                ? "It drives the car file over the bumps as the drive before tells them, at its speeds; its "
                    + "interval holds the doubts of the file and "
                    + FormattableString.Invariant($"of the bumps ({forecast.Draws} cars and roads drawn together).")
                : "It drives the car that the drive before tells over the bumps as that drive tells them, at its speeds: "
                    + "straight springs and dampers, "
                    + FormattableString.Invariant($"whose friction is in them ({forecast.Draws} cars and roads drawn together)."))
                + (answer.CarOfForecast is { IsBelieved: false, Refusals: [var doubt, ..] }
                    ? $" The car that this drive tells is not believed, and the bumps are told by it: {doubt.Says}"
                    : ""));
        }
    }

    /// <summary>The forecast for machines; null where there is none.</summary>
    public static JsonObject? Facts(ProveAnswer answer)
    {
        if (answer.Forecast is not { } forecast)
        {
            return null;
        }

        var said = Said(answer, forecast);
        return new JsonObject
        {
            ["change"] = forecast.Change, ["value"] = said.Value, ["low"] = said.Low, ["high"] = said.High,
            ["kept"] = Score(answer, forecast)?.IsKept,
        };
    }

    private static Bracket Said(ProveAnswer answer, Forecast forecast) =>
        answer.Main.Number == ComparedNumber.Headline ? forecast.Headline : forecast.Hit;

    private static ForecastScore? Score(ProveAnswer answer, Forecast forecast) => answer.Main.Result.Pooled is { } effect
        ? new ForecastScore(Said(answer, forecast), new Bracket(effect.Value, effect.Low, effect.High))
        : null;

    private static string Bracket(Bracket share)
    {
        static string Signed(double value) => Numeral.Change(In.Percent.Of(value), 1);
        return $"{Signed(share.Value)} % ({Signed(share.Low)}…{Signed(share.High)})";
    }
}
