using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What the car file had said of the change on the very road of the drive before, beside what was measured.</summary>
internal static class ProveForecast
{
    // One pass tells no hump apart from the road about it.
    private const int FewestPasses = 2;

    /// <summary>A drive with those bumps alone that both drives crossed and that this one crossed twice: they tell the car and the road.</summary>
    public static ProvedDrive Crossed(ProvedDrive drive, SiteMatches matches)
    {
        var sites = matches.All.Where(m => m.Before.Kept >= FewestPasses).Select(m => m.Before.Name).ToHashSet(StringComparer.Ordinal);
        return drive with
        {
            Events = drive.Events with
            {
                Events = [.. drive.Events.Events.Select(e => !e.IsKept || sites.Contains(e.Site) ? e : e with { Reason = "Not crossed often enough." })],
            },
        };
    }

    /// <summary>The forecast; null where it was not asked for, or the drive before does not tell its car.</summary>
    public static Forecast? Of(ProveAsked asked, ProvedDrive before, CarFromDrive? car, CancellationToken stop) =>
        asked is { Car: { } file, Changed: { } changed } && car is { IsBelieved: true }
            ? Forecast.Of(file.Car, changed, file.Load, before.Drive, before.Events, car, stop)
            : null;

    /// <summary>Both beside each other; null where either is missing. The headline alone is scored.</summary>
    public static ForecastScore? Score(Forecast? forecast, ProvedNumber number) =>
        forecast is not null && number.Number == ComparedNumber.Headline && number.Result.Pooled is { } measured
            ? forecast.Score(new Bracket(measured.Value, measured.Low, measured.High))
            : null;

    /// <summary>In words.</summary>
    public static IEnumerable<Sentence> Words(ProveAnswer answer)
    {
        if (answer.Asked.Car is not { } car || answer.Asked.Changed is null)
        {
            yield break;
        }

        if (answer.Forecast is not { } forecast)
        {
            yield return new Sentence(
                "forecast", "No forecast: the drive before the change tells no car that is believed, and with it no road. "
                + (answer.CarBefore is { Refusals: [var first, ..] } ? first.Says : ""));
            yield break;
        }

        var counted = forecast.Passes.Count(p => p.IsCounted);
        var said = Text($"'{forecast.Change}' under '{car.Load.Name}', driven over the road of the drive before, changes the headline by ")
            + Text($"{Share(forecast.Headline)} over {counted} of {forecast.Passes.Length} passes");
        yield return new Sentence("forecast", Score(forecast, answer.Main) is { } score
            ? Text($"{said}; measured {Share(score.Measured)}: the forecast is {(score.IsKept ? "kept" : "not kept")}.")
            : said + ".");
        yield return new Sentence(
            "forecast-of", "The forecast is of the car file over the recovered road; its interval is of the road and of what planted drives were off by, "
            + "not of the file's own doubts. Believe its differences before its levels.");
    }

    /// <summary>For machines.</summary>
    public static JsonObject? Json(ProveAnswer answer) => answer.Forecast is not { } forecast ? null : new JsonObject
    {
        ["change"] = forecast.Change,
        ["headline"] = Array(forecast.Headline),
        ["hit"] = Array(forecast.Hit),
        ["kept"] = Score(forecast, answer.Main)?.IsKept,
        ["passes"] = new JsonArray([.. forecast.Passes.Select(p => (JsonNode)new JsonObject
        {
            ["event"] = p.Number,
            ["site"] = p.Site,
            ["speed"] = p.Speed,
            ["counted"] = p.IsCounted,
            ["before"] = Array(p.Headline.Before),
            ["after"] = Array(p.Headline.After),
            ["change"] = Array(p.Headline.Change),
        })]),
    };

    private static JsonArray Array(Bracket bracket) => [Finite(bracket.Value), Finite(bracket.Low), Finite(bracket.High)];

    private static JsonNode? Finite(double value) => double.IsFinite(value) ? JsonValue.Create(value) : null;

    private static string Share(Bracket share) => Text(
        $"{In.Percent.Of(share.Value):+0;−0;0} % ({In.Percent.Of(share.Low):+0;−0;0}…{In.Percent.Of(share.High):+0;−0;0})");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
