using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Links;

/// <summary>Downloads of the page of the link: the bench and the passes as svg, png, pdf, and all numbers as csv, json.</summary>
internal static class LinkRoutes
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/download/link.{ending}", (
            string ending, HttpRequest request, GarageView garage, PageStudy<LinkAsked, LinkAnswer, LinkView> study, ServeOptions options,
            CancellationToken aborted) => Get(ending, request, garage, study, options, view => view.Bars, "", aborted));
        routes.MapGet("/download/link-traces.{ending}", (
            string ending, HttpRequest request, GarageView garage, PageStudy<LinkAsked, LinkAnswer, LinkView> study, ServeOptions options,
            CancellationToken aborted) => ending is "csv" or "json"
                ? Task.FromResult(Results.NotFound())
                : Get(ending, request, garage, study, options, view => view.Traces, "-traces", aborted));
    }

    private static Task<IResult> Get(
        string ending,
        HttpRequest request,
        GarageView garage,
        PageStudy<LinkAsked, LinkAnswer, LinkView> study,
        ServeOptions options,
        Func<LinkView, Figures.Figure> figure,
        string what,
        CancellationToken aborted)
    {
        if (!Download.IsEnding(ending))
        {
            return Task.FromResult(Results.NotFound());
        }

        var given = PageChoices.Of(request.QueryString.Value ?? "", LinkStudy.OnPage.Choices, garage).Given;
        return StudyDownload.Of(
            study,
            LinkView.Read(given, garage),
            view => Download.Of(
                view.Answer, LinkStudy.OnPage.Word, options.Version, () => figure(view).In(garage.Units), ending,
                $"{given.Of(Choices.Car)}-link{what}"),
            aborted);
    }
}
