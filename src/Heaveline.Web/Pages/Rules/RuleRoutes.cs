using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Rules;

/// <summary>Downloads of the page of the rule: the fine map as svg, png, pdf, csv, json.</summary>
internal static class RuleRoutes
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/download/rule.{ending}", Get);

    private static Task<IResult> Get(
        string ending,
        HttpRequest request,
        GarageView garage,
        PageStudy<RuleAsked, RuleAnswer, RuleView> study,
        ServeOptions options,
        CancellationToken aborted)
    {
        if (!Download.IsEnding(ending))
        {
            return Task.FromResult(Results.NotFound());
        }

        var given = PageChoices.Of(request.QueryString.Value ?? "", RuleStudy.OnPage.Choices, garage).Given;
        var reading = RuleStudy.OnPage.Read(given, garage);
        return StudyDownload.Of(
            study,
            reading.Asked is null ? reading : RuleView.Read(given, garage),
            view => File(
                view.By(reading.Asked!.Measure.Word!) ?? throw view.NoNumber(reading.Asked.Measure),
                garage.Units, given.Of(Choices.Car)!, ending, options.Version),
            aborted);
    }

    private static IResult File(RuleView view, ReaderUnits units, string car, string ending, string version)
    {
        var asked = view.Answer.Asked;
        var name = $"{car}-rule-{asked.Rule.Word}-{asked.Measure.Word}";
        return Download.Of(view.Answer, RuleStudy.OnPage.Word, version, () => view.Figure.In(units), ending, name);
    }
}
