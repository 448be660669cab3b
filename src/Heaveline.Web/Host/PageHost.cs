using System.Net;
using Heaveline.Web.Frame;
using Heaveline.Web.Guard;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;
using Heaveline.Web.Pages.Drives;
using Heaveline.Web.Pages.Chosen;
using Heaveline.Web.Pages.Films;
using Heaveline.Web.Pages.Links;
using Heaveline.Web.Pages.Rules;
using Heaveline.Web.Pages.Reports;
using Heaveline.Web.Pages.Rides;
using Heaveline.Web.Pages.Stories;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Heaveline.Web.Host;

/// <summary>Puts the pages together behind their guards.</summary>
public static class PageHost
{
    /// <summary>The most one message from a page may hold, bytes: a car file with room to spare.</summary>
    internal const int LongestMessage = 1 << 20;

    /// <summary>Everything but the start: call <see cref="WebApplication.StartAsync"/>.</summary>
    /// <exception cref="ArgumentException">An open address without a pairing code or a certificate.</exception>
    public static WebApplication Of(ServeOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!options.IsLoopback && string.IsNullOrEmpty(options.PairingCode))
        {
            throw new ArgumentException("An address that others can reach needs a pairing code.", nameof(options));
        }

        if (!options.IsLoopback && options.Certificate is null)
        {
            throw new ArgumentException("An address that others can reach needs a certificate.", nameof(options));
        }

        // Settings files, environment and command line of the host are left out: what is served is said here and nowhere else.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory,
            ApplicationName = "Heaveline.Cli",
            EnvironmentName = "Production",
        });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LongestMessage;
            kestrel.Limits.MaxConcurrentUpgradedConnections = Connections.Most;
            var connections = kestrel.ApplicationServices.GetRequiredService<Connections>();
            kestrel.Listen(options.Address, options.Port, listen =>
            {
                // One request a connection at a time: the bound on connections is then one on requests too.
                listen.Protocols = HttpProtocols.Http1;
                listen.Use(next => connection => connections.Serve(connection, next));
                if (options.Certificate is { } certificate)
                {
                    listen.UseHttps(certificate);
                }

                listen.Use(next => connection => RefusedRequest.Serve(connection, next));
            });
        });
        builder.Logging.AddSimpleConsole(console => console.SingleLine = true);
        builder.Logging.AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // A start that fails is told by whoever starts: once, in words.
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        // A stranger's form without a token, or with a spoilt one, is answered in words; whoever may come unasked must not fill the owner's terminal.
        builder.Logging.AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.None);
        var services = builder.Services;
        services.AddSingleton(made => new Connections(options.Clock, made.GetRequiredService<ILogger<Connections>>()));
        services.AddRouting();
        // Keys live and die with the program: nothing of them is written to the disk.
        services.AddDataProtection().UseEphemeralDataProtectionProvider();
        services.AddAntiforgery(forms => forms.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest);
        services.AddRazorComponents().AddInteractiveServerComponents(circuits => circuits.DisconnectedCircuitMaxRetained = 20);
        services.Configure<HubOptions>(hub => hub.MaximumReceiveMessageSize = LongestMessage);
        AddPages(services, options);

        var app = builder.Build();
        app.UseMiddleware<PageHeaders>();
        app.UseMiddleware<AddressGuard>();
        if (options.PairingCode is not null)
        {
            app.UseMiddleware<Pairing>();
        }

        app.UseMiddleware<Methods>();
        app.UseMiddleware<Crowd>();
        app.UseStatusCodePagesWithReExecute("/no-such-page", createScopeForStatusCodePages: true);
        // Where it stands, and not first of all: what is asked for is looked up after the guards have read how.
        app.UseRouting();
        app.UseAntiforgery();
        app.MapStaticAssets();
        PageFaces.Map(app);
        Pages.Passes.PassRoutes.Map(app);
        LogDoor.Map(app);
        FilmIntake.Map(app);
        RuleRoutes.Map(app);
        RideRoutes.Map(app);
        LinkRoutes.Map(app);
        ChooseRoutes.Map(app);
        Pages.Cars.CarRoutes.Map(app);
        DriveRoutes.Map(app);
        FilmRoutes.Map(app);
        ReportRoutes.Map(app);
        // The policy of PageHeaders says who may frame a page; one header of it is enough.
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(components => components.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    /// <summary>Where a started host is reached, for a person to open.</summary>
    public static Uri AddressOf(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var bound = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        return IPAddress.TryParse(bound.Host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address)
            ? new Uri($"{bound.Scheme}://localhost:{bound.Port}/")
            : bound;
    }

    /// <summary>All the addresses by which a started host is reached, where it listens at all those of the machine the network's first.</summary>
    public static IReadOnlyList<Uri> AddressesOf(WebApplication app)
    {
        var bound = AddressOf(app);
        if (!IPAddress.TryParse(bound.Host.Trim('[', ']'), out var address) || !MachineAddress.IsAll(address))
        {
            return [bound];
        }

        return
        [
            .. MachineAddress.Reached(address).Select(one => new UriBuilder(bound.Scheme, one.ToString(), bound.Port).Uri),
            new UriBuilder(bound.Scheme, "localhost", bound.Port).Uri,
        ];
    }

    /// <summary>Adds what the pages ask for: the garage, and each question with its queue.</summary>
    internal static void AddPages(IServiceCollection services, ServeOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton<GarageView>();
        services.AddSingleton<LogDoor>();
        services.AddSingleton<FilmIntake>();
        // What is long waits for its turn; what is short does not wait behind it.
        var (queue, brief) = (new StudyQueue(), new StudyQueue(Environment.ProcessorCount));
        services.AddSingleton(_ => RuleView.StudyIn(queue));
        services.AddSingleton(_ => Pages.Passes.CureView.StudyIn(brief));
        services.AddSingleton(_ => SweepView.StudyIn(queue, options.Version));
        services.AddSingleton(_ => SpectraView.StudyIn(brief));
        services.AddSingleton(_ => LinkView.StudyIn(brief));
        services.AddSingleton(_ => ChooseView.StudyIn(queue));
        services.AddSingleton<RideRoads>();
        services.AddSingleton<DriveReadings>();
        services.AddSingleton(made => made.GetRequiredService<DriveReadings>().StudyIn(brief));
        services.AddSingleton(made => made.GetRequiredService<DriveReadings>().ProofIn(brief));
        services.AddSingleton(_ => new DriveDetails(brief));
        services.AddSingleton(_ => FilmView.StudyIn(brief));
        services.AddSingleton(_ => FlashView.StudyIn(brief));
        // Pictures wait in a queue of their own: two films at once are enough for a machine.
        services.AddSingleton(_ => new FilmDoor(options, new StudyQueue(2)));
        services.AddSingleton(_ => new Pages.Passes.TrialSpeeds(brief));
        services.AddSingleton<MadeReports>();
        services.AddSingleton(_ => StoryStudies.Drives(brief));
        services.AddSingleton(_ => StoryStudies.Causes(brief));
        services.AddSingleton(_ => StoryStudies.Price(brief));
    }
}
