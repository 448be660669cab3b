using System.Collections.Frozen;
using System.Security.Cryptography;
using System.Text;
using Heaveline.Press;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Frame;

/// <summary>
/// The figures' own faces, for the pages too: no page looks for a font elsewhere. What they hold is in their names, so a browser fetches each once.
/// </summary>
internal static class PageFaces
{
    private static readonly (string Face, string Rule)[] Faces =
    [
        ("Regular", "font-weight: 400;"), ("Bold", "font-weight: 600 700;"), ("Italic", "font-weight: 400; font-style: italic;"),
    ];

    private static readonly FrozenDictionary<string, (byte[] Bytes, string Type)> Files = Made();

    /// <summary>Address of the sheet of rules that names the faces.</summary>
    public static string Sheet { get; } = $"lettering/{Files.Keys.Single(name => name.EndsWith(".css", StringComparison.Ordinal))}";

    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/lettering/{name}", (string name, HttpContext context) =>
    {
        if (!Files.TryGetValue(name, out var file))
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "max-age=31536000, immutable";
        return Results.Bytes(file.Bytes, file.Type);
    });

    private static FrozenDictionary<string, (byte[] Bytes, string Type)> Made()
    {
        var files = new Dictionary<string, (byte[] Bytes, string Type)>();
        var rules = new StringBuilder();
        foreach (var (face, rule) in Faces)
        {
            using var read = new MemoryStream();
            using (var stream = typeof(Svg).Assembly.GetManifestResourceStream($"Heaveline.Press.Fonts.HeavelineSans-{face}.ttf")!)
            {
                stream.CopyTo(read);
            }

            var name = Keep(face, "woff2", CompressedFace.Of(read.ToArray()), "font/woff2");
            rules.Append("@font-face { font-family: \"Heaveline Sans\"; src: url(\"").Append(name).Append("\") format(\"woff2\"); ").Append(rule)
                .Append(" font-display: swap; }\n");
        }

        Keep("faces", "css", Encoding.UTF8.GetBytes(rules.ToString()), "text/css; charset=utf-8");
        return files.ToFrozenDictionary();

        string Keep(string name, string ending, byte[] bytes, string type)
        {
            var told = $"{name}-{Convert.ToHexStringLower(SHA256.HashData(bytes))[..12]}.{ending}";
            files.Add(told, (bytes, type));
            return told;
        }
    }
}
