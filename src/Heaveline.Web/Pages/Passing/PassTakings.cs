using System.Text;
using System.Text.Json.Nodes;
using Heaveline.Figures;
using Heaveline.Files.Passes;
using Heaveline.Insight;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Responses;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Passing;

/// <summary>What can be taken away from the pass page, by the same address as the page: figures, traces, measures.</summary>
internal static class PassTakings
{
    private const string Utf8 = "; charset=utf-8";

    /// <summary>Adds the addresses.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/take/pass.{kind}", (string kind, HttpRequest asked, Shelf shelf) => Take(asked, shelf, view => kind switch
        {
            "csv" => Results.File(Traces(view), "text/csv" + Utf8, Name(view, "csv")),
            "json" => Results.File(Encoding.UTF8.GetBytes(Measures(view).ToJsonString(Indented)), "application/json", Name(view, "json")),
            _ => Picture(kind, view, () => PassFigure.Of(view.Now.Pass, view.Now.Measures), ""),
        }));
        routes.MapGet("/take/pass-before-after.{kind}", (string kind, HttpRequest asked, Shelf shelf) => Take(asked, shelf, view => view.Former is { } former
            ? Picture(kind, view, () => CompareFigure.Of([(former.Name, former.Pass, former.Measures), (view.Now.Name, view.Now.Pass, view.Now.Measures)]), "-before-after")
            : Results.Text("Nothing has been changed: there is no before to set this against.", "text/plain" + Utf8, Encoding.UTF8, StatusCodes.Status404NotFound)));
    }

    /// <summary>The measures with what they are of.</summary>
    public static JsonObject Measures(PassView view)
    {
        var pass = view.Now.Pass;
        return new JsonObject
        {
            ["car"] = view.Now.Model.Car.Name,
            ["load"] = view.Now.Model.Load.Name,
            ["road"] = pass.Road.Caption,
            ["speed-km-h"] = 3.6 * pass.Speed,
            ["outcome"] = pass.Outcome.ToString(),
            ["former"] = view.Former?.Name,
            ["set"] = new JsonObject(view.State.Values.Select(value => KeyValuePair.Create(value.Key, (JsonNode?)value.Value))),
            ["measures"] = new JsonArray([.. MeasureRows.Of(view.Now, view.Former).Select(row => (JsonNode)new JsonObject
            {
                ["key"] = row.Key,
                ["of"] = row.Group,
                ["what"] = row.Label,
                ["unit"] = row.Unit,
                ["before"] = row.Before,
                ["after"] = row.After,
            })]),
            ["story"] = new JsonArray([.. PassStory.Of(pass, view.Now.Measures).Select(sentence => (JsonNode)sentence)]),
            ["method"] = pass.Statistics.Method,
            ["step-s"] = pass.Statistics.Step,
        };
    }

    private static readonly System.Text.Json.JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static IResult Take(HttpRequest asked, Shelf shelf, Func<PassView, IResult> of)
    {
        try
        {
            if (shelf.CarNames is not [var first, ..])
            {
                return Refuse("There is no car in the garage.", StatusCodes.Status404NotFound);
            }

            return of(new PassDesk(shelf).See(PassState.Of(asked.Query, first), full: true));
        }
        catch (PassProblemException problem)
        {
            return Refuse($"{problem.Message}. {problem.Advice}\n{problem.Details}", StatusCodes.Status404NotFound);
        }
        catch (RefusedValueException refused)
        {
            return Refuse(refused.Message, StatusCodes.Status400BadRequest);
        }
        catch (RunFailedException failed)
        {
            return Refuse(failed.Message, StatusCodes.Status422UnprocessableEntity);
        }
    }

    private static IResult Refuse(string sentence, int status) => Results.Text(sentence, "text/plain" + Utf8, Encoding.UTF8, status);

    private static IResult Picture(string kind, PassView view, Func<Figure> figure, string part) => kind switch
    {
        "svg" => Results.File(Svg.Of(figure()), "image/svg+xml", Name(view, "svg", part)),
        "png" => Results.File(Png.Of(figure()), "image/png", Name(view, "png", part)),
        "pdf" => Results.File(Pdf.Of(figure()), "application/pdf", Name(view, "pdf", part)),
        _ => Refuse("Figures come as svg, png or pdf, numbers as csv or json.", StatusCodes.Status404NotFound),
    };

    private static byte[] Traces(PassView view) => view.Former is { } former
        ? TraceCsv.Of([(former.Name, former.Pass), (view.Now.Name, view.Now.Pass)])
        : TraceCsv.Of(view.Now.Pass);

    private static string Name(PassView view, string kind, string part = "") => $"{view.State.Car}-pass{part}.{kind}";
}
