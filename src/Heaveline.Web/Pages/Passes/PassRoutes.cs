using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Passes;

/// <summary>Downloads of the pass page, by the same address as the page: figures, traces, measures.</summary>
internal static class PassRoutes
{
    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(
            "/download/pass.{kind}",
            (string kind, HttpRequest asked, GarageView garageView, ServeOptions options) => Get(asked, garageView, view => kind switch
            {
                "csv" => Download.Csv(Traces(view), Name(view)),
                "json" => Download.Json(Json(view, options.Version), Name(view)),
                _ => Download.Picture(view.Now.Figure(PassAnswer.Traces).In(garageView.Units), kind, Name(view)),
            }));
        routes.MapGet(
            "/download/pass-live.html",
            (HttpRequest asked, GarageView garageView, ServeOptions options) => Get(asked, garageView, view => view.Now.Pass.Count > 1
                ? Download.Page(new LiveFile(view, garageView.Units, options.Version).Bytes(), Name(view) + "-live")
                : Download.Missing($"There is nothing to show: {view.Now.Pass.OutcomeSentence}")));
        routes.MapGet(
            "/download/pass-film.webp",
            (HttpRequest asked, GarageView garageView) => Get(asked, garageView, view => view.Now.Pass.Count > 1
                ? Download.Film(
                    PassFilm.Of(view.Now.Pass, view.Now.Measures).Select(frame => frame.In(garageView.Units)),
                    PassFilm.Shown,
                    Name(view) + "-film",
                    asked.HttpContext.RequestAborted)
                : Download.Missing($"There is nothing to show: {view.Now.Pass.OutcomeSentence}")));
        routes.MapGet(
            "/download/pass-before-after.{kind}",
            (string kind, HttpRequest asked, GarageView garageView) => Get(asked, garageView, view => view.Before is { } before
                ? Download.Picture(
                    CompareFigure.Of([(before.Name, before.Pass, before.Measures), (view.After.Name, view.After.Pass, view.After.Measures)])
                        .In(garageView.Units),
                    kind,
                    Name(view) + "-before-after")
                : Download.Missing("Nothing has been changed: there is no before to set this against.")));
    }

    /// <summary>The numbers as the command writes them, with what was set; beside them those that they are set against.</summary>
    internal static string Json(PassView view, string version)
    {
        var facts = view.Now.Facts;
        facts["former"] = view.Before?.Name;
        facts["set"] = new JsonObject(view.State.Values.Select(value => KeyValuePair.Create(value.Key, (JsonNode?)value.Value)));
        var tables = view.Before is { IsWhole: true } before && view.After.IsWhole
            ? [CompareAnswer.Table("Pass", [before, view.After])]
            : view.Now.Tables;
        return TablesJson.Of(version, PassStudy.Question.Word, tables, facts);
    }

    private static Task<IResult> Get(HttpRequest asked, GarageView garageView, Func<PassView, IResult> of) => Download.Answer(() =>
    {
        if (garageView.UsualCar is not { } usual)
        {
            return Task.FromResult(Download.Missing("There is no car in the garage."));
        }

        var (view, objections) = new PassTrial(garageView).See(PassState.Of(asked.QueryString.Value ?? "", usual), full: true);
        return Task.FromResult(view is null ? Download.Refused(objections) : of(view));
    });

    private static byte[] Traces(PassView view) => view.Before is { } before
        ? TraceCsv.Of([(before.Name, before.Pass), (view.After.Name, view.After.Pass)])
        : view.Now.Csv();

    private static string Name(PassView view) => $"{view.State.Car}-pass";
}
