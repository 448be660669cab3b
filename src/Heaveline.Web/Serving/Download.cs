using Microsoft.AspNetCore.Http;
using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Quantities;

namespace Heaveline.Web.Serving;

/// <summary>Files that a page offers for download.</summary>
internal static class Download
{
    /// <summary>A figure as svg, png or pdf; not found for another ending.</summary>
    public static IResult Picture(Figure figure, string ending, string name) => ending switch
    {
        "svg" => File(Svg.Of(figure), "image/svg+xml", name, ending),
        "png" => File(Png.Of(figure), "image/png", name, ending),
        "pdf" => File(Pdf.Of(figure), "application/pdf", name, ending),
        _ => Results.NotFound(),
    };

    /// <summary>A file under a name of its own.</summary>
    public static IResult File(byte[] bytes, string type, string name, string ending) => Results.File(bytes, type, $"{Plain(name)}.{ending}");

    /// <summary>What cannot be downloaded, in words: a refused value or a run that failed.</summary>
    public static IResult Refused(string sentence) =>
        Results.Text(sentence, "text/plain; charset=utf-8", statusCode: StatusCodes.Status422UnprocessableEntity);

    /// <summary>Answers a request, or says in words why it cannot be answered.</summary>
    public static async Task<IResult> Answer(Func<Task<IResult>> of)
    {
        try
        {
            return await of();
        }
        catch (NoAnswerException none)
        {
            return Refused(none.Message);
        }
    }

    // Names of cars may hold anything; a file's name holds letters, digits and hyphens.
    private static string Plain(string name) =>
        string.Join('-', name.Split([.. name.Where(c => !char.IsAsciiLetterOrDigit(c)).Distinct()], StringSplitOptions.RemoveEmptyEntries));
}
