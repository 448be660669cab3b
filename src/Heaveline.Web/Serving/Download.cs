using System.Text;
using Microsoft.AspNetCore.Http;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Web.Serving;

/// <summary>Files that a page offers for download.</summary>
internal static class Download
{
    /// <summary>Ending of the address of an SVG whose letters are outlines; the file's own has two dots, which an address would take apart.</summary>
    public const string Outlines = "outlines";

    /// <summary>Whether <see cref="Of"/> knows an ending: asked before anything is computed.</summary>
    public static bool IsEnding(string ending) => ending is "svg" or Outlines or "png" or "pdf" or "csv" or "json";

    /// <summary>A figure as svg, with letters as outlines too, png or pdf; not found for another ending.</summary>
    public static IResult Picture(Figure figure, string ending, string name) => ending switch
    {
        "svg" => File(Svg.Of(figure), "image/svg+xml", name, ending),
        Outlines => File(Svg.Of(figure, outlines: true), "image/svg+xml", name, FigureFile.OutlinesEnding[1..]),
        "png" => File(Png.Of(figure), "image/png", name, ending),
        "pdf" => File(Pdf.Of(figure), "application/pdf", name, ending),
        _ => Results.NotFound(),
    };

    /// <summary>An answer as csv or json, else a figure of it; not found for another ending.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="question">Word of the question.</param>
    /// <param name="version">Version of the program.</param>
    /// <param name="figure">The figure, made where it is asked for; null for none.</param>
    /// <param name="ending">The ending.</param>
    /// <param name="name">The file's name without it.</param>
    public static IResult Of(Answer answer, string question, string version, Func<Figure>? figure, string ending, string name) => ending switch
    {
        "csv" => Csv(answer.Csv(), name),
        "json" => Json(answer.Json(version, question), name),
        _ => figure is null ? Results.NotFound() : Picture(figure(), ending, name),
    };

    /// <summary>Numbers as CSV.</summary>
    public static IResult Csv(byte[] text, string name) => File(text, "text/csv; charset=utf-8", name, "csv");

    /// <summary>Numbers as JSON.</summary>
    public static IResult Json(string text, string name) => File(Encoding.UTF8.GetBytes(text), "application/json", name, "json");

    /// <summary>Figures that follow each other, as one moving picture.</summary>
    /// <param name="frames">The figures.</param>
    /// <param name="shown">How long each is shown, s.</param>
    /// <param name="name">The file's name without its ending.</param>
    /// <param name="gone">Whoever asked is gone.</param>
    public static IResult Film(IEnumerable<Figure> frames, double shown, string name, CancellationToken gone) =>
        File(Webp.Of(frames, shown, gone), "image/webp", name, "webp");

    /// <summary>A page that stands by itself, to be kept as a file.</summary>
    public static IResult Page(byte[] html, string name) => File(html, "text/html; charset=utf-8", name, "html");

    private static IResult File(byte[] bytes, string type, string name, string ending) => Results.File(bytes, type, $"{Plain(name)}.{ending}");

    /// <summary>There is nothing of that name (404 [RFC 9110 §15.5.5]).</summary>
    public static IResult Missing(string sentence) => Words(sentence, StatusCodes.Status404NotFound);

    /// <summary>What cannot be answered as it is asked: a refused value or a run that failed (422 [RFC 9110 §15.5.21]).</summary>
    public static IResult Refused(string sentence) => Words(sentence, StatusCodes.Status422UnprocessableEntity);

    /// <summary>What cannot be answered: not there where a name means nothing, else refused.</summary>
    public static IResult Refused(IReadOnlyList<Objection> objections, char between = ' ')
    {
        var sentences = string.Join(between, objections.Select(o => o.Sentence));
        return objections.Any(o => o.IsMissing) ? Missing(sentences) : Refused(sentences);
    }

    /// <summary>Answers a request, or says in words why it cannot be answered.</summary>
    /// <param name="of">The answer.</param>
    /// <param name="gone">Cancelled when nobody reads the answer any more.</param>
    public static async Task<IResult> Answer(Func<Task<IResult>> of, CancellationToken gone = default)
    {
        try
        {
            return await of();
        }
        catch (QueueFullException full)
        {
            return new BusyResult(Words(full.Message, StatusCodes.Status429TooManyRequests));
        }
        catch (NoAnswerException none)
        {
            return Refused(none.Message);
        }
        catch (OperationCanceledException) when (gone.IsCancellationRequested)
        {
            return Results.Empty;
        }
    }

    private static IResult Words(string sentence, int status) => Results.Text(sentence, "text/plain; charset=utf-8", statusCode: status);

    // Names of cars may hold anything; a file's name holds letters, digits and hyphens.
    private static string Plain(string name) =>
        string.Join('-', name.Split([.. name.Where(c => !char.IsAsciiLetterOrDigit(c)).Distinct()], StringSplitOptions.RemoveEmptyEntries));

    // Too many requests (429 [RFC 6585 §4]), and when to come back.
    private sealed class BusyResult(IResult words) : IResult, IStatusCodeHttpResult
    {
        public int? StatusCode => ((IStatusCodeHttpResult)words).StatusCode;

        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.Headers.RetryAfter = "30";
            return words.ExecuteAsync(httpContext);
        }
    }
}
