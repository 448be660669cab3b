using System.Net;
using Heaveline.Quantities;
using Npgsql;
using StackExchange.Redis;

namespace Heaveline.Cluster;

/// <summary>Where is noted which machines are there: at the machine of the study itself, or in a database that a laboratory has.</summary>
public sealed record Membership
{
    private const string RedisWord = "redis ";
    private const string PostgresWord = "postgres ";
    private const string RedisPassword = "REDISCLI_AUTH";

    // Seconds.
    private const int Soon = 5;

    private Membership()
    {
    }

    /// <summary>At the machine of the study.</summary>
    public static Membership Own { get; } = new();

    /// <summary>Whether they are noted at the machine of the study.</summary>
    internal bool IsOwn => Redis is null && Postgres is null;

    /// <summary>How to connect to Redis; null for none.</summary>
    internal ConfigurationOptions? Redis { get; private init; }

    /// <summary>Words to connect to PostgreSQL; null for none.</summary>
    internal string? Postgres { get; private init; }

    /// <summary>Where the database is; blank where there is none.</summary>
    internal string Place => Redis is not null
        ? string.Join(", ", Redis.EndPoints.Select(one => one is DnsEndPoint named ? $"{named.Host}:{named.Port}" : $"{one}"))
        : Postgres is not null && new NpgsqlConnectionStringBuilder(Postgres) is var own ? $"{own.Host}:{own.Port}"
        : "";

    /// <summary>From words: <c>redis 192.168.1.5:6379</c> or <c>postgres Host=192.168.1.5;Database=heaveline;…</c>.</summary>
    /// <remarks>
    /// A password is no part of them: words of a command are seen by whoever sees the processes of the machine, and are said again where others are
    /// told how to help. PostgreSQL's stands in <c>PGPASSWORD</c> or in a file that <c>PGPASSFILE</c> names (postgresql.org, "Environment
    /// Variables"), that of Redis in <c>REDISCLI_AUTH</c> (redis.io, "Redis CLI").
    /// </remarks>
    /// <exception cref="RefusedValueException">They are neither, or say a password.</exception>
    public static Membership Of(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return words.StartsWith(RedisWord, StringComparison.Ordinal) ? new Membership { Redis = OfRedis(words[RedisWord.Length..].Trim()) }
            : words.StartsWith(PostgresWord, StringComparison.Ordinal)
                ? new Membership { Postgres = OfPostgres(words[PostgresWord.Length..].Trim()) }
            : throw Unknown($"'{words}'");
    }

    private static ConfigurationOptions OfRedis(string words)
    {
        try
        {
            var options = ConfigurationOptions.Parse(words);
            if (options.Password is not null || words.Contains("password", StringComparison.OrdinalIgnoreCase) || NamesWhoAsks(words))
            {
                throw Password(RedisPassword);
            }

            // Whoever waits here is told soon that nobody answers.
            if (!words.Contains("connect", StringComparison.OrdinalIgnoreCase))
            {
                (options.ConnectTimeout, options.ConnectRetry) = ((int)TimeSpan.FromSeconds(Soon).TotalMilliseconds, 1);
            }

            options.Password = Environment.GetEnvironmentVariable(RedisPassword);
            return options;
        }
        catch (ArgumentException)
        {
            throw Unknown("words that do not say how to reach Redis");
        }
    }

    private static string OfPostgres(string words)
    {
        try
        {
            var options = new NpgsqlConnectionStringBuilder(words);
            if (options.Password is not null || options.SslPassword is not null || NamesWhoAsks(words))
            {
                throw Password("PGPASSWORD");
            }

            if (!words.Contains("timeout", StringComparison.OrdinalIgnoreCase))
            {
                options.Timeout = Soon;
            }

            return options.ConnectionString;
        }
        catch (Exception none) when (none is ArgumentException or KeyNotFoundException or FormatException or OverflowException)
        {
            throw Unknown("words that do not say how to reach PostgreSQL");
        }
    }

    // NAME:PASSWORD@HOST.
    private static bool NamesWhoAsks(string words) =>
        words.Split(',', ';').Any(word => word.IndexOf(':', StringComparison.Ordinal) is >= 0 and var colon && word.IndexOf('@', colon) > colon);

    private static RefusedValueException Password(string variable) => new(
        "where machines are noted", "words with a password in them", "words without one",
        $"Set it in the variable {variable}, at each machine: words of a command are seen by others.");

    private static RefusedValueException Unknown(string value) => new(
        "where machines are noted", value, $"'{RedisWord}HOST:PORT' or '{PostgresWord}Host=…;Database=…'",
        "Leave it out where there is no such database: the machine of the study notes them itself.");
}
