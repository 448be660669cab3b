using System.Globalization;
using System.Threading.RateLimiting;
using Heaveline.Files;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Serving;

/// <summary>
/// The one door by which a page sends a file that is too long for a message: a log, into the drives of the garage. What comes is bounded in bytes, in
/// how many at once and in how many in a time, is written as it is under a name of its own, and is never written over anything.
/// </summary>
internal sealed class LogDoor : IDisposable
{
    /// <summary>Its address.</summary>
    public const string Address = "/log";

    /// <summary>
    /// How a body must be called. No form of another site can send that without asking first [Fetch, WHATWG, CORS-safelisted request-header].
    /// </summary>
    public const string ContentType = "application/octet-stream";

    /// <summary>Most files that come in at once.</summary>
    public const int AtOnce = 2;

    /// <summary>Most files in <see cref="Window"/>.</summary>
    public const int MostInWindow = 120;

    /// <summary>The time in which they are counted.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(10);

    private const int MostWaiting = 4;
    private readonly ConcurrencyLimiter atOnce = new(new ConcurrencyLimiterOptions { PermitLimit = AtOnce, QueueLimit = MostWaiting });
    private readonly FixedWindowRateLimiter inTime = new(new FixedWindowRateLimiterOptions { PermitLimit = MostInWindow, Window = Window });

    /// <summary>Opens it.</summary>
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapPost(Address, (HttpContext context, LogDoor door, GarageView garage) => door.Take(context, garage));

    public void Dispose()
    {
        atOnce.Dispose();
        inTime.Dispose();
    }

    private async Task<IResult> Take(HttpContext context, GarageView garage)
    {
        var request = context.Request;
        if (!string.Equals(request.ContentType, ContentType, StringComparison.OrdinalIgnoreCase))
        {
            return Words($"A log is sent as {ContentType}.", StatusCodes.Status415UnsupportedMediaType);
        }

        if (request.ContentLength is not { } length)
        {
            return Words("Say how long the log is.", StatusCodes.Status411LengthRequired);
        }

        var most = FileFormat.DriveLog.MostBytes;
        if (length > most)
        {
            return Words(
                string.Create(CultureInfo.InvariantCulture, $"The file has {length} bytes; it must have {most} or fewer. Pack it as a .zip."),
                StatusCodes.Status413PayloadTooLarge);
        }

        using var often = inTime.AttemptAcquire();
        using var turn = often.IsAcquired ? await atOnce.AcquireAsync(1, context.RequestAborted) : null;
        if (turn is not { IsAcquired: true })
        {
            context.Response.Headers.RetryAfter = often.IsAcquired ? "10" : "600";
            return Words("Too many logs come in. Send it again in a while.", StatusCodes.Status429TooManyRequests);
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = most;
        }

        using var bytes = new MemoryStream();
        try
        {
            await request.Body.CopyToAsync(bytes, context.RequestAborted);
        }
        catch (Exception broken) when (broken is IOException or OperationCanceledException)
        {
            // Whoever sent it is gone, or sent less than was said: nothing of it is kept.
            return Words("The log did not arrive whole. Send it again.", StatusCodes.Status400BadRequest);
        }

        var file = request.Query["file"].ToString();
        var body = bytes.GetBuffer().AsMemory(0, (int)bytes.Length);
        var outcome = request.Query["drive"].ToString() is { Length: > 0 } drive
            ? garage.Garage.Drives.Add(drive, file, body)
            : garage.Garage.Drives.Begin(request.Query["name"].ToString(), file, body);
        return outcome.Drive is { } name
            ? Results.Json(new { drive = name }, statusCode: StatusCodes.Status201Created)
            : Words($"{outcome.Message} {outcome.Advice}", StatusCodes.Status422UnprocessableEntity);
    }

    private static IResult Words(string sentence, int status) => Results.Text(sentence, "text/plain; charset=utf-8", statusCode: status);
}
