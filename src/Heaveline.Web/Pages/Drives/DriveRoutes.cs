using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Drives;

/// <summary>
/// Downloads of the page of the drive: its figures as svg, png, pdf, and the numbers of the drive and of the comparison as csv and json.
/// </summary>
internal static class DriveRoutes
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(
            "/download/{what:regex(^(drive|drive-events|drive-distance|drive-spectra|drive-car|drive-fit|drive-roughness)$)}.{ending}", GetDrive);
        routes.MapGet("/download/{what:regex(^(drive-dots|drive-power)$)}.{ending}", GetProof);
    }

    private static Task<IResult> GetDrive(
        string what,
        string ending,
        HttpRequest request,
        GarageView garage,
        ServeOptions options,
        PageStudy<DriveSource, DriveAnswer, DriveView> study,
        CancellationToken aborted)
    {
        var reading = Read(request, garage);
        return StudyDownload.Of(
            study,
            reading.Asked,
            view =>
            {
                if (what == "drive")
                {
                    return Download.Of(
                        view.Answer, DriveStudy.Question.Word, options.Version, () => view.Strip.In(garage.Units), ending, $"{reading.Folder}-drive");
                }

                var id = what["drive-".Length..];
                if (id == DriveAnswer.Rough)
                {
                    view.Answer.Detail?.RoughnessOf(aborted);
                }

                return Download.Picture(view.Answer.Figure(id).In(garage.Units), ending, $"{reading.Folder}-{what}");
            },
            aborted);
    }

    private static Task<IResult> GetProof(
        string what,
        string ending,
        HttpRequest request,
        GarageView garage,
        ServeOptions options,
        PageStudy<DriveSource, ProveAnswer, ProofView> study,
        CancellationToken aborted)
    {
        var reading = Read(request, garage);
        return StudyDownload.Of(
            study,
            reading.Proof,
            view => what == "drive-dots"
                ? Download.Of(
                    view.Answer, ProveStudy.Question.Word, options.Version, () => view.Dots.In(garage.Units), ending, $"{reading.Folder}-{what}")
                : Download.Picture(view.Power.In(garage.Units), ending, $"{reading.Folder}-{what}"),
            aborted);
    }

    private static DriveReading Read(HttpRequest request, GarageView garage) =>
        DriveReading.Of(PageChoices.Of(request.QueryString.Value ?? "", [DriveReading.Log], garage), garage);
}
