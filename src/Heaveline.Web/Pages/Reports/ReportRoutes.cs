using Heaveline.Web.Guard;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Pages.Reports;

/// <summary>
/// Downloads of the page of the report: the HTML file and the PDF, byte for byte what the report command writes;
/// and the HTML file to look at in a frame.
/// </summary>
internal static class ReportRoutes
{
    /// <summary>Address of a download.</summary>
    /// <param name="ending">html or pdf.</param>
    /// <param name="query">The query with its question mark.</param>
    public static string Address(string ending, string query) => $"download/report.{ending}{query}";

    /// <summary>Address of the file to look at.</summary>
    public static string Preview(string query) => PageHeaders.Framed[1..] + query;

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/download/report.{ending:regex(^(html|pdf)$)}", Get);
        routes.MapGet(PageHeaders.Framed, GetPreview);
    }

    private static Task<IResult> Get(string ending, HttpContext context, GarageView garageView, MadeReports reports, ServeOptions options)
    {
        var gone = context.RequestAborted;
        return Download.Answer(
            async () =>
            {
                context.Response.Headers.CacheControl = "no-store";
                var question = ReportQuestion.Of(ReportQuery.Of(context.Request.QueryString.Value ?? ""), garageView, options);
                if (question.Pdf is not { } pdf)
                {
                    return Refused(question);
                }

                var made = await reports.Make(question, null, null, gone);
                return ending == "html"
                    ? Results.File(made.Html, "text/html; charset=utf-8", question.File + ".html")
                    : Results.File(await reports.Pdf(made, pdf, question.Paper, gone), "application/pdf", question.File + ".pdf");
            },
            gone);
    }

    // Only what has been made: a frame, which may be loaded again at any time, starts no work.
    private static IResult GetPreview(HttpContext context, GarageView garageView, MadeReports reports, ServeOptions options)
    {
        // The same address shows another report once a car file has changed.
        context.Response.Headers.CacheControl = "no-store";
        var question = ReportQuestion.Of(ReportQuery.Of(context.Request.QueryString.Value ?? ""), garageView, options);
        return question.Html is null ? Refused(question)
            : reports.Find(question.Key) is { } made ? Results.Bytes(made.Html, "text/html; charset=utf-8")
            : Download.Missing("This report is not made, or has been forgotten since. Make it on its page.");
    }

    private static IResult Refused(ReportQuestion question) =>
        question.CarNames.Length == 0 ? Download.Missing("There is no car in the garage.") : Download.Refused(question.Objections, '\n');
}
