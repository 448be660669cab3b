using Microsoft.AspNetCore.Http;

namespace Heaveline.Web.Guard;

/// <summary>
/// Says with every answer what a browser may do with it: nothing from elsewhere, no script in the page, no frame around
/// it, and nothing kept that does not say so. [Content Security Policy Level 3, W3C].
/// </summary>
internal sealed class PageHeaders(RequestDelegate next)
{
    /// <summary>
    /// The policy. 'wasm-unsafe-eval' lets our own scripts make WebAssembly modules out of bytes (decision 16), and nothing else: text is still never
    /// run as a script.
    /// </summary>
    public const string Policy =
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; "
        + "font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'; frame-src 'self'";

    /// <summary>The one address that a page of ours shows in a frame: a report, which is a whole document of its own.</summary>
    public const string Framed = "/preview/report.html";

    /// <summary>
    /// The policy of that address: as strict, but our own pages may frame it, and its style and faces stand inside it. 'sandbox' makes it a document
    /// of no origin that can run, send and open nothing, in a frame and outside one.
    /// </summary>
    public const string FramedPolicy =
        "default-src 'none'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox";

    /// <summary>The one page that asks where it is, and only when its reader lets it: it records a drive.</summary>
    public const string Recorder = "/phone";

    public Task InvokeAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        var framed = context.Request.Path == Framed;
        headers.ContentSecurityPolicy = framed ? FramedPolicy : Policy;
        // What the policy says, for those that read only this [RFC 7034].
        headers.XFrameOptions = framed ? "SAMEORIGIN" : "DENY";
        headers.XContentTypeOptions = "nosniff";
        // Not 'no-referrer': a browser would then send its own forms as from nowhere (Origin: null), and they would be refused as foreign.
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] =
            $"camera=(), microphone=(), geolocation={(context.Request.Path == Recorder ? "(self)" : "()")}";
        // What says nothing of its own keeps may be kept by nobody: numbers of the garage belong in no cache [RFC 9111 §5.2.2.5].
        context.Response.OnStarting(() =>
        {
            if (headers.CacheControl.Count == 0)
            {
                headers.CacheControl = "no-store";
            }

            return Task.CompletedTask;
        });
        return next(context);
    }
}
