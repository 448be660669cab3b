using System.Globalization;
using System.Threading.RateLimiting;
using Heaveline.Files.Garages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;

namespace Heaveline.Web.Serving;

/// <summary>
/// The door by which a page sends a film into the garage. A page asks first whether it may come; it comes alone, is written to the disk as it comes,
/// under its own name, and never over anything. What does not begin as a film is not kept.
/// </summary>
internal sealed class FilmIntake : IDisposable
{
    /// <summary>Its address.</summary>
    public const string Address = "/film-file";

    /// <summary>Most films in <see cref="Window"/>.</summary>
    public const int MostInWindow = 60;

    /// <summary>The time in which they are counted.</summary>
    public static readonly TimeSpan Window = TimeSpan.FromMinutes(10);

    /// <summary>
    /// How fast a film must come, bytes a second: another waits until it is here. Common practice, no source: a weak radio link brings more.
    /// </summary>
    public const double LeastRate = 32_000.0;

    private readonly ConcurrencyLimiter atOnce = new(new ConcurrencyLimiterOptions { PermitLimit = 1, QueueLimit = 0 });
    private readonly FixedWindowRateLimiter inTime = new(new FixedWindowRateLimiterOptions { PermitLimit = MostInWindow, Window = Window });

    /// <summary>What a film is given besides, however short it is.</summary>
    public TimeSpan Grace { get; set; } = TimeSpan.FromMinutes(1);

    /// <summary>Opens it.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet(Address, (string? file, string? bytes, string? begins, GarageView garage) => Ask(file ?? "", bytes, begins ?? "", garage));
        routes.MapPost(Address, (HttpContext context, FilmIntake intake, GarageView garage) => intake.Take(context, garage.Garage));
    }

    public void Dispose()
    {
        atOnce.Dispose();
        inTime.Dispose();
    }

    // Nobody sends two gigabytes to be told afterwards that the name is taken.
    private static IResult Ask(string file, string? bytes, string begins, GarageView garage)
    {
        if (!long.TryParse(bytes, NumberStyles.None, CultureInfo.InvariantCulture, out var length))
        {
            return Words("Say how long the film is.", StatusCodes.Status400BadRequest);
        }

        return Refusal(garage.Garage, file, length) ?? (FilmFolder.BeginsAsFilm(Convert.FromHexString(Even(begins))) ? Results.NoContent()
            : Words(FilmFolder.NoFilm(file), StatusCodes.Status422UnprocessableEntity));
    }

    private static string Even(string hex) => hex.Length is > 0 and <= 64 && hex.Length % 2 == 0 && hex.All(char.IsAsciiHexDigit) ? hex : "";

    private static IResult? Refusal(Garage garage, string file, long length)
    {
        var free = FilmFolder.RoomOf(garage);
        return FilmFolder.Refused(garage, file, length, free) is not { } why ? null
            : Words(why, FilmFolder.Refused(garage, file, length, long.MaxValue) is null ? StatusCodes.Status507InsufficientStorage
                : StatusCodes.Status422UnprocessableEntity);
    }

    private async Task<IResult> Take(HttpContext context, Garage garage)
    {
        var (request, gone) = (context.Request, context.RequestAborted);
        if (!string.Equals(request.ContentType, LogDoor.ContentType, StringComparison.OrdinalIgnoreCase))
        {
            return Words($"A film is sent as {LogDoor.ContentType}.", StatusCodes.Status415UnsupportedMediaType);
        }

        if (request.ContentLength is not { } length)
        {
            return Words("Say how long the film is.", StatusCodes.Status411LengthRequired);
        }

        var file = request.Query["file"].ToString();
        if (Refusal(garage, file, length) is { } refusal)
        {
            return refusal;
        }

        // Who only met another is not counted.
        using var turn = atOnce.AttemptAcquire();
        using var often = turn.IsAcquired ? inTime.AttemptAcquire() : null;
        if (often is not { IsAcquired: true })
        {
            context.Response.Headers.RetryAfter = turn.IsAcquired ? "600" : "30";
            return Words(
                turn.IsAcquired ? "Too many films come in. Send it again in a while."
                    : "Another film is coming in. Send it again when that is here.",
                StatusCodes.Status429TooManyRequests);
        }

        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = length;
        }

        using var ends = CancellationTokenSource.CreateLinkedTokenSource(gone);
        ends.CancelAfter(Grace + TimeSpan.FromSeconds(length / LeastRate));
        try
        {
            // Read by one thread as it is written: one film comes at a time.
            using var body = new BlockingBody(request.Body, ends.Token);
            var (name, problem) = await Task.Run(() => FilmFolder.Put(garage, file, length, body, ends.Token), ends.Token);
            return name is null ? Words(problem, StatusCodes.Status422UnprocessableEntity)
                : Results.Json(new { film = name }, statusCode: StatusCodes.Status201Created);
        }
        catch (OperationCanceledException) when (!gone.IsCancellationRequested)
        {
            return Words(
                "The film comes so slowly that others would wait too long, and nothing of it is kept. Send it over a better line, or cut it to the "
                    + "seconds around the bump.",
                StatusCodes.Status408RequestTimeout);
        }
        catch (Exception broken) when (broken is OperationCanceledException or BadHttpRequestException
            || broken.InnerException is EndOfStreamException or BadHttpRequestException
            || gone.IsCancellationRequested)
        {
            return Words("The film did not arrive whole, and nothing of it is kept. Send it again.", StatusCodes.Status400BadRequest);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Words(
                InGarage(garage, failure.Message),
                failure is UnauthorizedAccessException ? StatusCodes.Status403Forbidden : StatusCodes.Status507InsufficientStorage);
        }
    }

    // Where the garage lies on this machine is nothing to whoever sends a film.
    private static string InGarage(Garage garage, string words) => words.Replace(
        Path.TrimEndingDirectorySeparator(Path.GetFullPath(garage.Folder)) + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);

    private static IResult Words(string sentence, int status) => Results.Text(sentence, "text/plain; charset=utf-8", statusCode: status);
}
