using Heaveline.Press;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Host;

/// <summary>The figures' own faces, for the pages too: no page looks for a font elsewhere.</summary>
internal static class Lettering
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/lettering/{face}.ttf", (string face, HttpContext context) =>
    {
        if (face is not ("Regular" or "Bold" or "Italic"))
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "max-age=86400";
        return Results.Stream(typeof(Svg).Assembly.GetManifestResourceStream($"Heaveline.Press.Fonts.HeavelineSans-{face}.ttf")!, "font/ttf");
    });
}
