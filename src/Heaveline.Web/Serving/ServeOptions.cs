using System.Net;
using System.Security.Cryptography.X509Certificates;
using Heaveline.Films;

namespace Heaveline.Web.Serving;

/// <summary>Where the pages are served, and from which garage.</summary>
public sealed record ServeOptions
{
    /// <summary>Folder of car files, variants, roads and reports. The pages read and write nothing outside it.</summary>
    public required string Garage { get; init; }

    /// <summary>Folder of the invented cars that come with the program, offered in a garage without any; null when they are not at hand.</summary>
    public string? Invented { get; init; }

    /// <summary>Folder of the invented lists of parts, which lies beside that of the cars; null when that is not at hand.</summary>
    public string? InventedParts =>
        Invented is { } cars ? Path.Combine(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(cars))!, "parts") : null;

    /// <summary>Port; 0: any free one.</summary>
    public int Port { get; init; } = 5090;

    /// <summary>The address to listen at. Anything but loopback asks every reader for the pairing code.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>The code a reader on another machine must type, or null on loopback.</summary>
    public string? PairingCode { get; init; }

    /// <summary>The certificate by which the pages are encrypted; null: they are not, which only loopback may be.</summary>
    public X509Certificate2? Certificate { get; init; }

    /// <summary>What time it is, for the names of earlier versions and for how long wrong codes wait.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Version of the program, shown in reports.</summary>
    public string Version { get; init; } = "unknown";

    /// <summary>What finds the garage's cars by their numbers; null: they are found by words alone.</summary>
    public IGarageNumbers? Numbers { get; init; }

    /// <summary>Finds what follows cars through films, once it is needed; gives null where it is not there.</summary>
    public Func<IFilmCamera?> Camera { get; init; } = () => null;

    /// <summary>What to do where it is not there.</summary>
    public string CameraMissing { get; init; } = "Following a film needs the camera part, which is a download of its own.";

    /// <summary>Whether only this machine is answered.</summary>
    public bool IsLoopback => IPAddress.IsLoopback(Address);
}
