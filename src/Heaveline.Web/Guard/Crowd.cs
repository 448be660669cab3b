using Microsoft.AspNetCore.Http;

namespace Heaveline.Web.Guard;

/// <summary>
/// Bounds how many pages are open at once. An open page holds one request for as long as it is open, and what the program computes for it; one too
/// many is told so (503 [RFC 9110 §15.6.4]).
/// </summary>
internal sealed class Crowd(RequestDelegate next)
{
    /// <summary>Most pages open at once.</summary>
    public const int Most = 64;

    private int open;

    public async Task InvokeAsync(HttpContext context)
    {
        if (!context.Request.Path.StartsWithSegments("/_blazor"))
        {
            await next(context);
            return;
        }

        try
        {
            if (Interlocked.Increment(ref open) <= Most)
            {
                await next(context);
                return;
            }

            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            context.Response.ContentType = "text/plain; charset=utf-8";
            context.Response.Headers.RetryAfter = "10";
            await context.Response.WriteAsync(FormattableString.Invariant($"{Most} pages are open already. Close one and load this one anew."));
        }
        finally
        {
            Interlocked.Decrement(ref open);
        }
    }
}
