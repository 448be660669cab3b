using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Rides;

/// <summary>
/// Downloads of the page of the ride: its figures as svg, png, pdf, and the numbers of the ride and the road as csv and json.
/// </summary>
internal static class RideRoutes
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/download/{what:regex(^(ride|ride-count)$)}.{ending}", GetSweep);
        routes.MapGet("/download/{what:regex(^(ride-spectra|ride-transfer)$)}.{ending}", GetSpectra);
        routes.MapGet("/download/road.{ending}", GetRoad);
    }

    private static Task<IResult> GetSweep(
        string what,
        string ending,
        HttpRequest request,
        GarageView garage,
        RideRoads roads,
        PageStudy<RideAsked, RideAnswer, SweepView> study,
        CancellationToken aborted)
    {
        var (reading, name) = Read(request, garage, roads, what);
        return StudyDownload.Of(
            study,
            reading.Sweep,
            view => (what, ending) switch
            {
                ("ride", "csv") => Download.Csv(view.Csv, name),
                ("ride", "json") => Download.Json(view.Json, name),
                _ => (what == "ride" ? view.Sweep : view.Count) is { } figure
                    ? Download.Picture(figure.In(garage.Units), ending, name)
                    : Results.NotFound(),
            },
            aborted);
    }

    private static Task<IResult> GetSpectra(
        string what,
        string ending,
        HttpRequest request,
        GarageView garage,
        RideRoads roads,
        PageStudy<RideAsked, RideAnswer, SpectraView> study,
        CancellationToken aborted)
    {
        var (reading, name) = Read(request, garage, roads, what);
        return StudyDownload.Of(
            study,
            reading.Spectra,
            view => Download.Picture((what == "ride-spectra" ? view.Spectra : view.Transfer).In(garage.Units), ending, name),
            aborted);
    }

    private static IResult GetRoad(string ending, HttpRequest request, GarageView garage, RideRoads roads, ServeOptions options)
    {
        var (reading, _) = Read(request, garage, roads, "road");
        return reading.Road is { } road
            ? Download.Of(
                road.Ground, RoadStudy.Question.Word, options.Version, () => road.Ground.Figure(RoadAnswer.Heights).In(garage.Units), ending,
                road.Heights.Name)
            : Download.Refused(reading.Sweep.Objections);
    }

    private static (RideReading Reading, string Name) Read(HttpRequest request, GarageView garage, RideRoads roads, string what)
    {
        var chosen = PageChoices.Of(request.QueryString.Value ?? "", RidePageChoices.All, garage);
        return (RideReading.Of(chosen, garage, roads), $"{chosen.Given.Of(Choices.Car)}-{what}");
    }
}
