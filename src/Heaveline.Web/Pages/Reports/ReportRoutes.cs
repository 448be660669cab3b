using Heaveline.Web.Guard;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
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

    private static Task<IResult> Get(
        string ending, HttpContext context, GarageView garageView, MadeReports reports, ServeOptions options) => Download.Answer(async () =>
    {
        context.Response.Headers.CacheControl = "no-store";
        var question = ReportQuestion.Of(ReportQuery.Of(context.Request.QueryString.Value ?? ""), garageView, options);
        if (question.Pdf is not { } pdf)
        {
            return Download.Refused(Objections(question));
        }

        var gone = context.RequestAborted;
        try
        {
            var made = await reports.Make(question, null, null, gone);
            return ending == "html"
                ? Results.File(made.Html, "text/html; charset=utf-8", question.File + ".html")
                : Results.File(await reports.Pdf(made, pdf, question.Paper, gone), "application/pdf", question.File + ".pdf");
        }
        catch (QueueFullException e)
        {
            context.Response.Headers.RetryAfter = "30";
            return Results.Text(e.Message, "text/plain; charset=utf-8", statusCode: StatusCodes.Status429TooManyRequests);
        }
        catch (OperationCanceledException) when (gone.IsCancellationRequested)
        {
            // Nobody reads the answer any more.
            return Results.Empty;
        }
    });

    // Only what has been made: a frame, which may be loaded again at any time, starts no work.
    private static IResult GetPreview(HttpContext context, GarageView garageView, MadeReports reports, ServeOptions options)
    {
        // The same address shows another report once a car file has changed.
        context.Response.Headers.CacheControl = "no-store";
        var question = ReportQuestion.Of(ReportQuery.Of(context.Request.QueryString.Value ?? ""), garageView, options);
        return question.Html is null ? Download.Refused(Objections(question))
            : reports.Find(question.Key) is { } made ? Results.Bytes(made.Html, "text/html; charset=utf-8")
            : Results.Text(
                "This report is not made, or has been forgotten since. Make it on its page.",
                "text/plain; charset=utf-8",
                statusCode: StatusCodes.Status404NotFound);
    }

    private static string Objections(ReportQuestion question) =>
        question.CarNames.Length == 0 ? "There is no car in the garage." : string.Join('\n', question.Objections.Select(o => o.Sentence));
}
