using System.Globalization;
using System.Text.Json.Nodes;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rides;

/// <summary>What can be taken away from the page of the road: its figures as svg, png, pdf, and the numbers of the ride and the road as csv and json.</summary>
internal static class RideRoutes
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet(
        "/take/road/{what}.{ending}",
        (string what, string ending, [AsParameters] RideChoices choices, [Microsoft.AspNetCore.Mvc.FromQuery(Name = "in-time")] string? time, GarageView garageView, RideDesk desk, ServeOptions options, CancellationToken aborted) => Download.Answer(async () =>
        {
            var question = RideQuestion.Of(choices, garageView);
            if (question.Refused.Count > 0)
            {
                return Download.Refused(string.Join(' ', question.Refused.Values));
            }

            if (what == "heights")
            {
                return Heights(question, ending, options.Version);
            }

            if (!question.CanDrive)
            {
                return Download.Refused(question.Road!.WhyNone ?? "There is no spectrum to drive over.");
            }

            var name = $"{question.CarName}-{what}";
            switch (what)
            {
                case "spectra":
                    return Download.Picture(desk.Spectra(question).Spectra, ending, name);
                case "transfer":
                    return Download.Picture(desk.Spectra(question).Transfer, ending, name);
                case "ride" or "count":
                    var inTime = time == "yes";
                    var view = desk.FindSweep(question, inTime) ?? await Task.Run(() => desk.Sweep(question, inTime, null, aborted), aborted);
                    return ending switch
                    {
                        "csv" when what == "ride" => Download.File(Csv(view.Tables), "text/csv; charset=utf-8", name, ending),
                        "json" when what == "ride" => Download.File(Json(options.Version, "ride", view.Tables, question, view.Cautions), "application/json", name, ending),
                        _ => (what == "ride" ? view.Sweep : view.Count) is { } figure ? Download.Picture(figure, ending, name) : Results.NotFound(),
                    };
                default:
                    return Results.NotFound();
            }
        }));

    private static IResult Heights(RideQuestion question, string ending, string version)
    {
        var road = question.Road!;
        return ending switch
        {
            "csv" => Download.File(HeightsCsv.Of(road.Heights), "text/csv; charset=utf-8", road.Heights.Name, ending),
            "json" => Download.File(Json(version, "road", [RoadTable.Of(road.Heights, road.Tracks)], question, [.. road.Tracks.SelectMany(t => t.Refused).Distinct()]), "application/json", road.Heights.Name, ending),
            _ => Download.Picture(FigureOf(road), ending, road.Heights.Name),
        };
    }

    /// <summary>The road as a figure.</summary>
    public static Figure FigureOf(RideRoad road) => RoadFigure.Of(road.Heights, road.Tracks[0], road.Tracks.Count > 1 ? road.Tracks[1] : null);

    private static byte[] Json(string version, string command, IReadOnlyList<FactTable> tables, RideQuestion question, IReadOnlyList<string> cautions) =>
        Encoding.UTF8.GetBytes(TablesJson.Of(version, command, tables, new JsonObject { ["road"] = question.Road!.Words, ["load"] = question.Load.Name, ["cautions"] = TablesJson.Texts(cautions) }));

    private static byte[] Csv(IReadOnlyList<FactTable> tables)
    {
        var text = new StringBuilder("car,quantity,unit");
        foreach (var column in tables[0].Columns)
        {
            text.Append(CultureInfo.InvariantCulture, $",{column}");
        }

        text.Append('\n');
        foreach (var (table, row) in tables.SelectMany(t => t.Rows.Select(r => (t, r))))
        {
            text.Append(CultureInfo.InvariantCulture, $"{CsvCell.Of(table.Title)},{CsvCell.Of(row.Label)},{row.Unit}");
            foreach (var value in row.Values)
            {
                text.Append(CultureInfo.InvariantCulture, $",{value:G9}");
            }

            text.Append('\n');
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
