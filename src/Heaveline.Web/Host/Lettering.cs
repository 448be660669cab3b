using System.Collections.Concurrent;
using System.IO.Compression;
using Heaveline.Press;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Host;

/// <summary>The figures' own faces, for the pages too: no page looks for a font elsewhere.</summary>
internal static class Lettering
{
    // A face is pressed together once, to about three fifths; it never changes.
    private static readonly ConcurrentDictionary<string, byte[]> Pressed = new(StringComparer.Ordinal);

    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/lettering/{face}.ttf", (string face, HttpContext context) =>
    {
        if (face is not ("Regular" or "Bold" or "Italic"))
        {
            return Results.NotFound();
        }

        var headers = context.Response.Headers;
        headers.CacheControl = "max-age=86400";
        headers.Vary = "Accept-Encoding";
        if (!context.Request.Headers.AcceptEncoding.Any(accepted => accepted?.Contains("gzip", StringComparison.OrdinalIgnoreCase) == true))
        {
            return Results.Stream(Face(face), "font/ttf");
        }

        headers.ContentEncoding = "gzip";
        return Results.Bytes(Pressed.GetOrAdd(face, Press), "font/ttf");
    });

    private static Stream Face(string face) => typeof(Svg).Assembly.GetManifestResourceStream($"Heaveline.Press.Fonts.HeavelineSans-{face}.ttf")!;

    private static byte[] Press(string face)
    {
        var pressed = new MemoryStream();
        using (var zip = new GZipStream(pressed, CompressionLevel.SmallestSize))
        using (var plain = Face(face))
        {
            plain.CopyTo(zip);
        }

        return pressed.ToArray();
    }
}
