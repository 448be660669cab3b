using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rules;

/// <summary>What can be taken away from the page of the rule: the fine map as svg, png, pdf, csv, json.</summary>
internal static class RuleRoutes
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/take/rule.{ending}", (string ending, [AsParameters] RuleChoices choices, GarageView garageView, RuleDesk desk, ServeOptions options, CancellationToken aborted) =>
        Download.Answer(async () =>
        {
            var question = RuleQuestion.Of(choices, garageView);
            if (question.Refused.Count > 0)
            {
                return Download.Refused(string.Join(' ', question.Refused.Values));
            }

            if (ending is not ("svg" or "png" or "pdf" or "csv" or "json"))
            {
                return Results.NotFound();
            }

            var view = desk.Find(question) ?? await Task.Run(() => desk.Answer(question, null, null, aborted), aborted);
            var name = $"{question.CarName}-rule-{question.Rule}-{question.Measure}";
            return ending switch
            {
                "csv" => Download.File(MapCsv.Of(view.Answer.Map), "text/csv; charset=utf-8", name, ending),
                "json" => Download.File(Encoding.UTF8.GetBytes(view.Answer.Json(options.Version)), "application/json", name, ending),
                _ => Download.Picture(view.Figure, ending, name),
            };
        }));
}
