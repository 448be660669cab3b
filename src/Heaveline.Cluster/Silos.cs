using System.Net;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Orleans.Configuration;
using Orleans.Connections.Security;

namespace Heaveline.Cluster;

/// <summary>Machines of a cluster, each encrypted towards the others and known by the key of the code.</summary>
internal static class Silos
{
    private const string Service = "heaveline";

    /// <summary>A machine, not yet started.</summary>
    /// <param name="own">Where it listens.</param>
    /// <param name="study">Where the machine of the study listens.</param>
    /// <param name="keys">What comes of the code.</param>
    /// <param name="membership">Where machines are noted.</param>
    /// <param name="mostMissed">How many questions in a row a machine may leave unanswered.</param>
    /// <param name="work">What does pieces here.</param>
    /// <param name="alarm">Told when this machine stands alone.</param>
    /// <param name="helped">The study, where it is that of this machine.</param>
    public static IHost Of(
        IPEndPoint own,
        IPEndPoint study,
        (X509Certificate2 Certificate, string Cluster) keys,
        Membership membership,
        int mostMissed,
        SlotWork work,
        StudyAlarm alarm,
        HelpedStudy? helped)
    {
        var builder = Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true });
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(work);
        builder.Services.AddSingleton<Orleans.Runtime.IFatalErrorHandler>(alarm);
        if (helped is not null)
        {
            builder.Services.AddSingleton(helped);
        }

        builder.UseOrleans(silo =>
        {
            Note(silo, study, membership);
            // No door for clients: whoever helps is a machine of the cluster.
            silo.ConfigureEndpoints(own.Address, own.Port, gatewayPort: 0, listenOnAnyHostAddress: false);
            silo.Configure<ClusterOptions>(o => (o.ClusterId, o.ServiceId) = (keys.Cluster, Service));
            silo.Configure<ClusterMembershipOptions>(o =>
            {
                // A machine that is killed is known to be after three seconds or four, not after ten or more.
                o.ProbeTimeout = TimeSpan.FromSeconds(1.0);
                o.NumMissedProbesLimit = mostMissed;
                o.NumVotesForDeathDeclaration = 1;
                o.TableRefreshTimeout = TimeSpan.FromSeconds(3.0);
                o.IAmAliveTablePublishTimeout = TimeSpan.FromSeconds(10.0);
                o.DefunctSiloCleanupPeriod = null;
                o.MaxJoinAttemptTime = TimeSpan.FromSeconds(30.0);
            });
            // Longer than any piece with those before it in its place, also while a machine still compiles what it runs.
            silo.Configure<SiloMessagingOptions>(o => o.ResponseTimeout = TimeSpan.FromSeconds(15.0));
            silo.UseTls(keys.Certificate, o => Secure(o, keys.Certificate));
        });
        return builder.Build();
    }

    private static void Note(ISiloBuilder silo, IPEndPoint study, Membership membership)
    {
        if (membership.Redis is { } redis)
        {
            silo.UseRedisClustering(o => o.ConfigurationOptions = redis);
        }
        else if (membership.Postgres is { } postgres)
        {
            silo.Services.AddSingleton<IMembershipTable>(services => new PostgresMembership(
                postgres, services.GetRequiredService<Microsoft.Extensions.Options.IOptions<ClusterOptions>>().Value.ClusterId));
        }
        else
        {
            silo.UseDevelopmentClustering(study);
        }
    }

    // Both ends show the certificate of the code; who has another key has another code, whoever signed it.
    private static void Secure(TlsOptions options, X509Certificate2 own)
    {
        options.ClientCertificateMode = RemoteCertificateMode.RequireCertificate;
        options.RemoteCertificateMode = RemoteCertificateMode.RequireCertificate;
        options.RemoteCertificateValidation = (certificate, _, _) => StudyCode.IsSame(certificate, own);
        options.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13;
        options.CheckCertificateRevocation = false;
        options.OnAuthenticateAsClient = (_, client) => client.TargetHost = Service;
    }
}
