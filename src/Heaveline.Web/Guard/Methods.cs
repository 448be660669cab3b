using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Http;

namespace Heaveline.Web.Guard;

/// <summary>
/// Says which ways of asking there are: what a page or a file is got by, and the same without its body [RFC 9110 §9.3.1, §9.3.2]. Whatever else is
/// asked is told so, with the ways there are (405 [RFC 9110 §15.5.6]). Only what an open page sends is posted: /_blazor, a log, a film.
/// </summary>
internal sealed class Methods(RequestDelegate next)
{
    /// <summary>The ways of asking for anything but what an open page sends.</summary>
    public const string Allowed = "GET, HEAD";

    public async Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        if (request.Path.StartsWithSegments("/_blazor"))
        {
            context.Response.OnStarting(() =>
            {
                if (context.Response is { StatusCode: StatusCodes.Status405MethodNotAllowed, Headers.Allow.Count: 0 })
                {
                    context.Response.Headers.Allow = HttpMethods.Post;
                }

                return Task.CompletedTask;
            });
            await next(context);
        }
        else if (request.Path == LogDoor.Address)
        {
            if (HttpMethods.IsPost(request.Method))
            {
                await next(context);
                return;
            }

            await Refuse(context, HttpMethods.Post, "A log is sent to this address (POST); there is nothing to read at it.");
        }
        else if (request.Path == FilmIntake.Address && HttpMethods.IsPost(request.Method))
        {
            await next(context);
        }
        else if (HttpMethods.IsHead(request.Method))
        {
            // Pages answer GET alone. The server knows what was asked and sends no body, whatever is written.
            request.Method = HttpMethods.Get;
            try
            {
                await next(context);
            }
            finally
            {
                request.Method = HttpMethods.Head;
            }
        }
        else if (HttpMethods.IsGet(request.Method))
        {
            await next(context);
        }
        else
        {
            await (request.Path == FilmIntake.Address
                ? Refuse(context, $"{Allowed}, {HttpMethods.Post}", "Here it is asked whether a film may come (GET, HEAD), and one is sent (POST).")
                : Refuse(context, Allowed, "What stands at this address can be read (GET, HEAD); nothing can be sent to it."));
        }
    }

    private static Task Refuse(HttpContext context, string allowed, string sentence)
    {
        context.Response.StatusCode = StatusCodes.Status405MethodNotAllowed;
        context.Response.Headers.Allow = allowed;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence);
    }
}
