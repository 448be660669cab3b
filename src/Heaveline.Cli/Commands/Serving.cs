using System.Net;
using System.Net.Sockets;
using Heaveline.Cli.Output;
using Heaveline.Files.Garages;
using Heaveline.Quantities;
using Heaveline.Web.Guard;
using Heaveline.Web.Host;
using Heaveline.Web.Serving;

namespace Heaveline.Cli.Commands;

/// <summary>The pages, hosted until they are stopped.</summary>
internal static class Serving
{
    public static async Task<int> Run(Streams streams, ServeAsked asked, CancellationToken stop)
    {
        var (garage, units, port, open, encrypted) = asked;
        if (port is < 0 or > 65535)
        {
            throw new Stopped($"heaveline: --port {port}: a port lies between 0 and 65535.", ExitCode.WrongUsage);
        }

        var address = open is null ? IPAddress.Loopback
            : IPAddress.TryParse(open, out var given) ? given
            : throw new Stopped(
                $"heaveline: --open-to '{open}': give an address of this machine in numbers, for instance 192.168.1.20.", ExitCode.WrongUsage);
        if (!IPAddress.IsLoopback(address) && !MachineAddress.IsAll(address) && !MachineAddress.All().Contains(address))
        {
            var own = MachineAddress.Reached(IPAddress.IPv6Any);
            throw new Stopped(
                $"heaveline: --open-to {open}: no address of this machine; it has "
                + $"{(own.Count > 0 ? string.Join(", ", own) : "none that others reach: it is in no network")}.",
                ExitCode.WrongUsage);
        }

        var invented = DemoGarage.Find();
        var folder = garage ?? invented
            ?? OwnGarage.In(Environment.CurrentDirectory, Environment.GetFolderPath(Environment.SpecialFolder.UserProfile))
            ?? throw new Stopped(
                $"heaveline: no folder '{OwnGarage.Name}' can be made here or at home; name a folder of car files.", ExitCode.WrongUsage);
        if (!Directory.Exists(folder))
        {
            throw new Stopped($"heaveline: there is no folder '{folder}'.", ExitCode.WrongUsage);
        }

        if (units is not null)
        {
            Remember(folder, units);
        }

        var isOpen = !IPAddress.IsLoopback(address);
        using var certificate = isOpen || encrypted ? OwnCertificate.Of(address, TimeProvider.System.GetUtcNow()) : null;
        var options = new ServeOptions
        {
            Garage = Path.GetFullPath(folder),
            Invented = invented,
            Port = port,
            Address = address,
            PairingCode = isOpen ? PairingCodes.Fresh() : null,
            Certificate = certificate,
            Version = Release.Version,
            Numbers = new GarageNumbers(),
            Camera = () => FilmCameras.Find(streams),
            CameraMissing = FilmCameras.Missing,
        };
        // Cars and variants that a page has saved stay saved.
        streams.StoppedWords = "heaveline: stopped by you.";
        var app = Hosted(options);
        await using (app)
        {
            try
            {
                await app.StartAsync(stop);
            }
            catch (IOException taken)
            {
                throw new Stopped(
                    $"heaveline: {taken.Message} Another program, or another 'heaveline serve', listens there; --port 0 takes a free port.",
                    ExitCode.NotComputed);
            }
            catch (SocketException refused)
            {
                throw new Stopped($"heaveline: {address} port {port} cannot be listened at: {refused.Message}.", ExitCode.NotComputed);
            }

            foreach (var (n, at) in PageHost.AddressesOf(app).Index())
            {
                streams.Results.WriteLine($"{(n == 0 ? "The pages are at" : "and at")} {at}");
            }

            streams.Results.WriteLine($"Garage: {options.Garage}");
            if (options.PairingCode is { } code)
            {
                streams.Results.WriteLine($"Other machines may open them after typing this code: {code}");
            }
            else if (open is not null)
            {
                streams.Results.WriteLine(
                    $"{address} is reached from this machine alone: no other can open them, and so no code is asked"
                    + (encrypted ? "." : " and nothing is encrypted. Give an address of this machine in your network to open them to others."));
            }

            if (certificate is not null)
            {
                streams.Results.WriteLine(
                    "A browser warns once, since nobody else signed the certificate. Compare its SHA-256 fingerprint before you go on:");
                streams.Results.WriteLine(OwnCertificate.Fingerprint(certificate));
            }

            streams.Results.WriteLine("Stop with Ctrl+C.");
            streams.Results.Flush();
            await app.WaitForShutdownAsync(stop);
        }

        return ExitCode.Done;
    }

    // What the pages load besides themselves lies where they were built until they are published.
    private static WebApplication Hosted(ServeOptions options)
    {
        try
        {
            return PageHost.Of(options);
        }
        catch (DirectoryNotFoundException gone)
        {
            throw new Stopped(
                $"heaveline: the pages need a folder that was there when they were built and is gone: '{gone.Message}'. "
                + $"Delete '{AppContext.BaseDirectory}' and build Heaveline anew where it stands now (./run does).",
                ExitCode.NotComputed);
        }
    }

    private static void Remember(string folder, string units)
    {
        if (!ReaderUnits.Words.Contains(units))
        {
            throw new Stopped($"heaveline: --units '{units}': there are {string.Join(", ", ReaderUnits.Words)}.", ExitCode.WrongUsage);
        }

        var saved = GarageChoices.Remember(new Garage(folder), ReaderUnits.Of(units));
        if (saved.End is not (SaveEnd.Saved or SaveEnd.Unchanged))
        {
            throw new Stopped($"heaveline: the units cannot be remembered: {saved.Message} {saved.Advice}", ExitCode.Refused);
        }
    }
}
