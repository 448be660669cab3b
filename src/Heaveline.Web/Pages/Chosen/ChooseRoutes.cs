using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>Downloads of the page of the choice: the trade-off as svg, png, pdf, and all numbers as csv, json.</summary>
internal static class ChooseRoutes
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/download/choose.{ending}", (
        string ending, HttpRequest request, GarageView garage, PageStudy<ChooseAsked, ChooseAnswer, ChooseView> study, ServeOptions options,
        CancellationToken aborted) =>
    {
        if (!Download.IsEnding(ending))
        {
            return Task.FromResult(Results.NotFound());
        }

        var query = request.QueryString.Value ?? "";
        var given = ChooseQuery.Given(
            PageChoices.Of(ChooseQuery.Filled(query, garage) ?? query, ChooseStudy.Question.Choices, garage).Given, garage);
        return StudyDownload.Of(
            study,
            ChooseStudy.Question.Read(given, garage),
            view => Download.Of(
                view.Answer, ChooseStudy.Question.Word, options.Version, () => view.TradeOff.In(garage.Units), ending,
                $"{given.Of(Choices.Car)}-choose"),
            aborted);
    });
}
