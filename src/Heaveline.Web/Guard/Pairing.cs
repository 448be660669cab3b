using System.Globalization;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;

using Heaveline.Web.Serving;

namespace Heaveline.Web.Guard;

/// <summary>
/// Before anything else, a reader on an open address must type the code that stands in the terminal. It is sent in a form, never in an address; the
/// browser then holds a secret of its own. An address that types wrong codes has to wait longer and longer.
/// </summary>
internal sealed class Pairing(RequestDelegate next, ServeOptions options, IAntiforgery antiforgery, Connections connections)
{
    private const string Cookie = "heaveline-pairing";
    private readonly string secret = Convert.ToHexString(RandomNumberGenerator.GetBytes(32));
    private readonly PairingTries tries = new(options.Clock);

    public async Task InvokeAsync(HttpContext context)
    {
        if (context.Request.Cookies[Cookie] is { } held
            && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.ASCII.GetBytes(held), System.Text.Encoding.ASCII.GetBytes(secret)))
        {
            connections.Know(context.Connection.RemoteIpAddress);
            await next(context);
            return;
        }

        if (HttpMethods.IsPost(context.Request.Method) && context.Request.Path == "/pair" && context.Request.HasFormContentType)
        {
            await Try(context);
            return;
        }

        await Ask(context, HttpMethods.IsGet(context.Request.Method) ? "" : "Type the code first.");
    }

    private async Task Try(HttpContext context)
    {
        IFormCollection form;
        try
        {
            if (!await antiforgery.IsRequestValidAsync(context))
            {
                await Ask(context, "The form was too old. Type the code again.");
                return;
            }

            form = await context.Request.ReadFormAsync(context.RequestAborted);
        }
        catch (Exception broken) when (broken is AntiforgeryValidationException or InvalidDataException or IOException)
        {
            // No form that a browser sends. Whoever may come here unasked must not fill the owner's terminal.
            var bad = broken as BadHttpRequestException ?? broken.InnerException as BadHttpRequestException;
            await Ask(
                context,
                "What was sent cannot be read as the form of this page. Type the code again.",
                bad?.StatusCode ?? StatusCodes.Status400BadRequest);
            return;
        }

        var from = context.Connection.RemoteIpAddress;
        if (tries.Begin(from) is var wait && wait > TimeSpan.Zero)
        {
            // Not looked at, right or wrong [RFC 6585 §4].
            var seconds = Math.Ceiling(wait.TotalSeconds).ToString("F0", CultureInfo.InvariantCulture);
            context.Response.Headers.RetryAfter = seconds;
            await Ask(context, $"Too many wrong codes from your address. Type it again in {seconds} s.", StatusCodes.Status429TooManyRequests);
            return;
        }

        if (!PairingCodes.Matches(form["code"], options.PairingCode!))
        {
            await Ask(context, "That is not the code in the terminal.");
            return;
        }

        tries.Succeed(from);
        connections.Know(from);
        context.Response.Cookies.Append(
            Cookie, secret, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", Secure = context.Request.IsHttps });
        context.Response.Redirect("/");
    }

    private async Task Ask(HttpContext context, string remark, int status = StatusCodes.Status401Unauthorized)
    {
        var tokens = antiforgery.GetAndStoreTokens(context);
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/html; charset=utf-8";
        // The whole page stands here: nothing else is served to a reader who has not paired, not even a style sheet.
        await context.Response.WriteAsync($"""
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark"><title>Pairing: Heaveline</title></head>
            <body><main><h1>Type the pairing code</h1>
            <p>It stands in the terminal where Heaveline was started, on the machine that serves these pages.</p>
            <p role="alert">{remark}</p>
            <form method="post" action="/pair"><input type="hidden" name="{tokens.FormFieldName}" value="{tokens.RequestToken}">
            <p><label for="code">Pairing code</label>
            <input id="code" name="code" autocomplete="off" autocapitalize="characters" spellcheck="false" required maxlength="20">
            <button>Open the garage</button></p></form></main></body></html>
            """);
    }
}
