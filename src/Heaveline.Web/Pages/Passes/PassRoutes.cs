using System.Text.Json.Nodes;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Files.Passes;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What can be taken away from the pass page, by the same address as the page: figures, traces, measures.</summary>
internal static class PassRoutes
{
    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/take/pass.{kind}", (string kind, HttpRequest asked, GarageView garageView, ServeOptions options) => Take(asked, garageView, view => kind switch
        {
            "csv" => Download.File(Traces(view), "text/csv; charset=utf-8", Name(view), kind),
            "json" => Download.File(Encoding.UTF8.GetBytes(Json(view, options.Version)), "application/json", Name(view), kind),
            _ => Download.Picture(PassFigure.Of(view.Now.Pass, view.Now.Measures), kind, Name(view)),
        }));
        routes.MapGet("/take/pass-before-after.{kind}", (string kind, HttpRequest asked, GarageView garageView) => Take(asked, garageView, view => view.Former is { } former
            ? Download.Picture(CompareFigure.Of([(former.Name, former.Pass, former.Measures), (view.Now.Name, view.Now.Pass, view.Now.Measures)]), kind, Name(view) + "-before-after")
            : Missing("Nothing has been changed: there is no before to set this against.")));
    }

    /// <summary>The numbers as the command hands them out; a former state stands in the column before, and what was set with it.</summary>
    public static string Json(PassView view, string version)
    {
        ArgumentNullException.ThrowIfNull(view);
        var (now, pass) = (view.Now, view.Now.Pass);
        Crossing[] crossings = [.. view.Former is { IsWhole: true } former ? [former] : Array.Empty<Crossing>(), now];
        string[] columns = crossings.Length > 1 ? [crossings[0].Name, "as set"] : [now.Model.Load.Name];
        IReadOnlyList<FactTable> tables = now.IsWhole
            ? [PassTable.Of("Pass", columns, [.. crossings.Select(c => (c.Pass, c.Measures))])]
            : [];
        var set = new JsonObject(view.State.Values.Select(value => KeyValuePair.Create(value.Key, (JsonNode?)value.Value)));
        return PassJson.Of(version, pass, tables, PassStory.Of(pass, now.Measures), new JsonObject { ["former"] = view.Former?.Name, ["set"] = set });
    }

    private static Task<IResult> Take(HttpRequest asked, GarageView garageView, Func<PassView, IResult> of) => Download.Answer(() =>
    {
        if (garageView.CarNames is not [var first, ..])
        {
            return Task.FromResult(Missing("There is no car in the garage."));
        }

        try
        {
            return Task.FromResult(of(new PassDesk(garageView).See(PassState.Of(asked.Query, first), full: true)));
        }
        catch (PassProblemException problem)
        {
            return Task.FromResult(Missing($"{problem.Message}. {problem.Advice}\n{problem.Details}"));
        }
    });

    private static IResult Missing(string sentence) => Results.Text(sentence, "text/plain; charset=utf-8", statusCode: StatusCodes.Status404NotFound);

    private static byte[] Traces(PassView view) => view.Former is { } former
        ? TraceCsv.Of([(former.Name, former.Pass), (view.Now.Name, view.Now.Pass)])
        : TraceCsv.Of(view.Now.Pass);

    private static string Name(PassView view) => $"{view.State.Car}-pass";
}
