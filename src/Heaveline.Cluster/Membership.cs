using Heaveline.Quantities;

namespace Heaveline.Cluster;

/// <summary>Where is noted which machines are there: at the machine of the study itself, or in a database that a laboratory has.</summary>
public sealed record Membership
{
    private const string RedisWord = "redis ";
    private const string PostgresWord = "postgres ";

    private Membership()
    {
    }

    /// <summary>At the machine of the study.</summary>
    public static Membership Own { get; } = new();

    /// <summary>Words to connect to Redis; null for none.</summary>
    internal string? Redis { get; private init; }

    /// <summary>Words to connect to PostgreSQL; null for none.</summary>
    internal string? Postgres { get; private init; }

    /// <summary>From words: <c>redis 192.168.1.5:6379</c> or <c>postgres Host=192.168.1.5;Database=heaveline;…</c>.</summary>
    /// <exception cref="RefusedValueException">They are neither.</exception>
    public static Membership Of(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return words.StartsWith(RedisWord, StringComparison.Ordinal) ? new Membership { Redis = words[RedisWord.Length..].Trim() }
            : words.StartsWith(PostgresWord, StringComparison.Ordinal) ? new Membership { Postgres = words[PostgresWord.Length..].Trim() }
            : throw new RefusedValueException(
                "where machines are noted", $"'{words}'", $"'{RedisWord}HOST:PORT' or '{PostgresWord}Host=…;Database=…'",
                "Leave it out where there is no such database: the machine of the study notes them itself.");
    }
}
