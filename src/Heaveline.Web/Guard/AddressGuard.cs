using System.Net;
using Microsoft.AspNetCore.Http;

using Heaveline.Web.Serving;

namespace Heaveline.Web.Guard;

/// <summary>
/// Answers only requests addressed to this machine by a name it knows, and sent from its own pages. A foreign name in Host is how another site's page
/// gets at a server on the reader's own machine once its name has been pointed here; a foreign Origin is such a page itself.
/// [RFC 9110 §7.2 and §7.4 Host; RFC 6454 §7 Origin; Fetch Metadata Request Headers, W3C, Sec-Fetch-Site].
/// </summary>
internal sealed class AddressGuard(RequestDelegate next, ServeOptions options)
{
    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        var port = context.Connection.LocalPort;
        if (request.Host.Port is { } asked && asked != port || !IsOurs(request.Host.Host))
        {
            return Refuse(context, "This program answers only under its own address. Open the address that it printed when it started.");
        }

        if (request.Headers.Origin is { Count: > 0 } origin
            && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase))
        {
            return Refuse(context, "A page from somewhere else has tried to use this program.");
        }

        // A link from another site may open a page; nothing else that another site starts is answered.
        var foreign = request.Headers["Sec-Fetch-Site"] == "cross-site" || request.Headers["Sec-Fetch-Site"] == "same-site";
        var opensPage = HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate"
            && request.Headers["Sec-Fetch-Dest"] == "document";
        return foreign && !opensPage ? Refuse(context, "A page from somewhere else has tried to use this program.") : next(context);
    }

    private bool IsOurs(string host)
    {
        // Names of hosts have no case [RFC 4343].
        if (host.Equals("localhost", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        // Only as it is usually written: other spellings of an address (one large number, octal, hexadecimal) belong to nobody with good intent.
        if (!IPAddress.TryParse(host.Trim('[', ']'), out var address)
            || !address.ToString().Equals(host.Trim('[', ']'), StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        return IPAddress.IsLoopback(address)
            || (!options.IsLoopback && (MachineAddress.IsAll(options.Address)
                ? MachineAddress.All().Contains(address)
                : address.Equals(options.Address)));
    }

    private static Task Refuse(HttpContext context, string sentence)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence);
    }
}
