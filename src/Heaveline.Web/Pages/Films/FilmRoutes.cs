using System.Globalization;
using Heaveline.Answers;
using Heaveline.Files.Garages;
using Heaveline.Films;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Films;

/// <summary>
/// Downloads of the page of the film: its figure as svg, png, pdf, its track as csv, all numbers as json; and one frame of a film of the garage to be
/// marked, which is shown and never offered to be taken away: what may be shown to others is the still, where plates cannot be read.
/// </summary>
internal static class FilmRoutes
{
    /// <summary>Where a frame is.</summary>
    public const string Frame = "film-frame";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/download/film.{ending}", (
            string ending, HttpRequest request, GarageView garage, PageStudy<FilmAsked, FilmAnswer, FilmView> study, ServeOptions options,
            CancellationToken aborted) => Get(
                ending, request, garage, study, reading => reading.Asked, Film(ending, "", garage, options), aborted));
        routes.MapGet("/download/film-place.{ending}", (
            string ending, HttpRequest request, GarageView garage, PageStudy<FilmAsked, FilmAnswer, FilmView> study, ServeOptions options,
            CancellationToken aborted) => ending == "csv"
                ? Task.FromResult(Results.NotFound())
                : Get(ending, request, garage, study, reading => reading.AtPlace, Film(ending, "-place", garage, options), aborted));
        routes.MapGet("/download/flash.{ending}", (
            string ending, HttpRequest request, GarageView garage, PageStudy<FlashAsked, FlashAnswer, FlashView> study, ServeOptions options,
            CancellationToken aborted) => Get(
                ending, request, garage, study, reading => reading.AskedOfLamp,
                (view, name) => Download.Of(
                    view.Answer, FlashStudy.Question.Word, options.Version, () => view.Figure.In(garage.Units), ending, $"{name}-lamp"),
                aborted));
        routes.MapGet($"/{Frame}", (string? film, string? at, GarageView garage, FilmDoor door, HttpResponse response, CancellationToken aborted) =>
        {
            response.Headers.CacheControl = "no-store";
            return double.TryParse(at, NumberStyles.Float, CultureInfo.InvariantCulture, out var time) && time is >= 0.0 and <= 36000.0
                ? Picture(film, garage, door, (camera, video, _) => camera.Frame(video, time, aborted), null, aborted)
                : Task.FromResult(Download.Refused("Say which frame: its time in the film, in seconds."));
        });
        routes.MapGet("/download/film-still.png", (string? film, GarageView garage, FilmDoor door, CancellationToken aborted) => Picture(
            film,
            garage,
            door,
            (camera, video, kept) => camera.Still(video, kept?.Sheet.Marks
                ?? throw new Quantities.RefusedValueException("the still", "no marks", "both hubs and a box", "Mark a frame."), aborted),
            "still",
            aborted));
    }

    private static Task<IResult> Picture(
        string? film, GarageView garage, FilmDoor door, Func<IFilmCamera, string, GarageFilm?, byte[]> of, string? what, CancellationToken aborted) =>
        Download.Answer(
            async () =>
            {
                // A film that no file describes is shown to be marked too: as one of a lamp.
                var lamp = GarageLamp.Of(garage.Garage, film ?? "");
                var (kept, problem) = lamp is null ? GarageFilm.Of(garage.Garage, film ?? "") : (null, "");
                if ((lamp?.Video ?? kept?.Video) is not { } video)
                {
                    return Download.Missing(kept is null ? problem : kept.VideoProblem.Length > 0 ? kept.VideoProblem : "Its file names no film.");
                }

                return !door.IsThere ? Download.Missing(door.Missing)
                    : Results.File(
                        await door.Run(camera => of(camera, video, kept), aborted), "image/png",
                        what is null ? null : $"{Path.GetFileNameWithoutExtension(film)}-{what}.png");
            },
            aborted);

    private static Task<IResult> Get<TAsked, TAnswer, TView>(
        string ending,
        HttpRequest request,
        GarageView garage,
        PageStudy<TAsked, TAnswer, TView> study,
        Func<FilmReading, AskedReading<TAsked>> which,
        Func<TView, string, IResult> file,
        CancellationToken aborted)
        where TAsked : class
        where TAnswer : Answer
        where TView : class
    {
        if (!Download.IsEnding(ending))
        {
            return Task.FromResult(Results.NotFound());
        }

        var reading = FilmReading.Of(PageChoices.Of(request.QueryString.Value ?? "", FilmReading.All, garage), garage);
        return StudyDownload.Of(study, which(reading), view => file(view, Path.GetFileNameWithoutExtension(reading.Name ?? "")), aborted);
    }

    private static Func<FilmView, string, IResult> Film(string ending, string what, GarageView garage, ServeOptions options) => (view, name) =>
        Download.Of(view.Answer, FilmStudy.Question.Word, options.Version, () => view.Figure.In(garage.Units), ending, $"{name}-film{what}");
}
