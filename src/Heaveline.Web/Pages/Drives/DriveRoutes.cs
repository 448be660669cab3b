using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Drives;

/// <summary>Downloads of the page of the drive: its figures as svg, png, pdf, and its numbers as csv and json.</summary>
internal static class DriveRoutes
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/download/drive.{ending}", Get);

    private static Task<IResult> Get(
        string ending,
        HttpRequest request,
        GarageView garage,
        ServeOptions options,
        PageStudy<DriveSource, DriveAnswer, DriveView> study,
        CancellationToken aborted)
    {
        var reading = DriveReading.Of(PageChoices.Of(request.QueryString.Value ?? "", [DriveReading.Log], garage), garage);
        return StudyDownload.Of(
            study,
            reading.Asked,
            view => Download.Of(
                view.Answer, DriveStudy.Question.Word, options.Version, () => view.Strip.In(garage.Units), ending, $"{reading.Folder}-drive"),
            aborted);
    }
}
