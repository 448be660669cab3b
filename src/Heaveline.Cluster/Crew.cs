using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Heaveline.Quantities;
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

    /// <summary>
    /// The fewest different ones among them, chosen by us: a code that was made by chance has fewer once in 10⁹ times.
    /// </summary>
    public const int FewestSigns = 8;

    // PBKDF2 as for the code of a study: who reads the database guesses no faster than who knocks at a study.
    private const int StretchedBytes = 32;
    private static readonly byte[] Salt = Encoding.ASCII.GetBytes("heaveline crew code 1");

    private readonly Lazy<byte[]> stretched = null!;

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>The database in which machines and studies are noted.</summary>
    public required Membership NotedIn { get; init; }

    /// <summary>The code that every machine of it has. It is sent nowhere.</summary>
    public required string Code
    {
        get;
        init
        {
            field = IsHardToGuess(value) ? value : throw new RefusedValueException(
                "the code of the crew", "one that could be guessed", $"of {ShortestCode} letters and digits, {FewestSigns} of them different",
                "Have one made.");
            stretched = new(() => Rfc2898DeriveBytes.Pbkdf2(
                StudyCode.Plain(value), Salt, StudyCode.Rounds, HashAlgorithmName.SHA256, StretchedBytes));
        }
    }

    /// <summary>A new code.</summary>
    public static string FreshCode() => string.Join('-', StudyCode.Fresh(), StudyCode.Fresh());

    /// <summary>Whether a code is long enough, and not few signs again and again.</summary>
    public static bool IsHardToGuess(string code) =>
        StudyCode.Plain(code) is { Length: >= ShortestCode } plain && plain.Distinct().Count() >= FewestSigns;

    /// <summary>The address of this machine by which it reaches the database, and others of the crew reach it.</summary>
    /// <remarks>A loopback address where the database is known by no other: whoever is at another machine finds nothing there.</remarks>
    /// <exception cref="SocketException">No machine of that name is known.</exception>
    public IPAddress OwnAddress()
    {
        var (host, port) = Database();
        if (host is null || (IPAddress.TryParse(host, out var given) && IPAddress.IsLoopback(given)))
        {
            return IPAddress.Loopback;
        }

        return Ports.Towards(new IPEndPoint(Outward(Dns.GetHostAddresses(host)), port));
    }

    /// <summary>
    /// The one of a database's addresses by which the crew reaches it: a machine that it runs on may know it by a loopback address too, by which
    /// nobody else does.
    /// </summary>
    internal static IPAddress Outward(IReadOnlyList<IPAddress> found) =>
        found.OrderBy(IPAddress.IsLoopback).ThenBy(one => one.AddressFamily != AddressFamily.InterNetwork).First();

    /// <summary>Under what it is noted: what comes of the code, and does not tell it.</summary>
    internal string Mark => Convert.ToHexStringLower(Of("crew")[..8]);

    /// <summary>The code of a study of this crew.</summary>
    internal string CodeOf(string study) => StudyCode.Of(Of($"study {study}"));

    private byte[] Of(string what) =>
        HMACSHA256.HashData(stretched.Value, Encoding.UTF8.GetBytes($"heaveline {what}"));

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
