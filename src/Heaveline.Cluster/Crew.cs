using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Npgsql;

namespace Heaveline.Cluster;

/// <summary>
/// Machines that stand by for whatever study any of them begins: a database where they find one another, and a code that all of them have.
/// </summary>
public sealed record Crew
{
    /// <summary>
    /// The fewest letters and digits of a code: it is not made anew for each study, and whoever can read the database may guess at it.
    /// </summary>
    public const int ShortestCode = 20;

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>The database in which machines and studies are noted.</summary>
    public required Membership NotedIn { get; init; }

    /// <summary>The code that every machine of it has. It is sent nowhere.</summary>
    public required string Code { get; init; }

    /// <summary>A new code.</summary>
    public static string FreshCode() => string.Join('-', StudyCode.Fresh(), StudyCode.Fresh());

    /// <summary>Whether a code is long enough.</summary>
    public static bool IsLong(string code) => StudyCode.Plain(code).Length >= ShortestCode;

    /// <summary>The address of this machine by which it reaches the database, and others of the crew reach it.</summary>
    /// <exception cref="SocketException">No machine of that name is known.</exception>
    public IPAddress OwnAddress()
    {
        var (host, port) = Database();
        if (host is null || (IPAddress.TryParse(host, out var given) && IPAddress.IsLoopback(given)))
        {
            return IPAddress.Loopback;
        }

        var found = Dns.GetHostAddresses(host);
        return Ports.Towards(new IPEndPoint(found.FirstOrDefault(one => one.AddressFamily == AddressFamily.InterNetwork) ?? found[0], port));
    }

    /// <summary>Under what it is noted: what comes of the code, and does not tell it.</summary>
    internal string Mark => Convert.ToHexStringLower(Of("crew")[..8]);

    /// <summary>The code of a study of this crew.</summary>
    internal string CodeOf(string study) => StudyCode.Of(Of($"study {study}"));

    private byte[] Of(string what) =>
        HMACSHA256.HashData(Encoding.ASCII.GetBytes(StudyCode.Plain(Code)), Encoding.UTF8.GetBytes($"heaveline {what}"));

    // Null where it is a socket of this machine.
    private (string? Host, int Port) Database()
    {
        if (NotedIn.Redis is { } redis)
        {
            return redis.EndPoints.FirstOrDefault() switch
            {
                IPEndPoint at => (at.Address.ToString(), at.Port),
                DnsEndPoint at => (at.Host, at.Port),
                _ => (null, 0),
            };
        }

        var postgres = new NpgsqlConnectionStringBuilder(NotedIn.Postgres);
        var first = (postgres.Host ?? "").Split(',')[0];
        return (first.Length == 0 || first.StartsWith('/') ? null : first, postgres.Port);
    }
}
