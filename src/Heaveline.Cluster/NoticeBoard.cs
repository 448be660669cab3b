using System.Net.Sockets;
using Npgsql;
using StackExchange.Redis;

namespace Heaveline.Cluster;

/// <summary>The notices of a crew, wherever they are.</summary>
internal static class NoticeBoard
{
    /// <summary>How long a notice stays that is not put up again: so long a study that was killed is still looked for.</summary>
    public static readonly TimeSpan Stays = TimeSpan.FromSeconds(20.0);

    /// <summary>How often it is put up again.</summary>
    public static readonly TimeSpan Again = TimeSpan.FromSeconds(5.0);

    /// <summary>Those of a crew.</summary>
    public static INoticeBoard Of(Crew crew) => crew.NotedIn switch
    {
        { Redis: { } redis } => new RedisBoard(redis, crew.Mark),
        { Postgres: { } postgres } => new PostgresBoard(postgres, crew.Mark),
        _ => throw new InvalidOperationException("A crew is noted in a database."),
    };

    /// <summary>Such a failure in words: those of the libraries tell of settings that nobody here has.</summary>
    public static string Words(Crew crew, Exception silence) => silence switch
    {
        RedisConnectionException { FailureType: ConnectionFailureType.AuthenticationFailure } =>
            $"Redis at {crew.NotedIn.Place} wants another password than REDISCLI_AUTH has",
        PostgresException refused => PlainWords.Sentence(refused.MessageText),
        NpgsqlException { InnerException: null } => PlainWords.Sentence(silence.Message).TrimEnd('.'),
        RedisServerException => PlainWords.Sentence(silence.Message).TrimEnd('.'),
        _ => $"no database answers at {crew.NotedIn.Place}"
            + (silence.GetBaseException() is SocketException refused ? $" ({PlainWords.Sentence(refused.Message)})" : ""),
    };

    /// <summary>Whether a failure is the database's, or of the way there: not of a file of this machine.</summary>
    public static bool IsSilence(Exception failure) =>
        failure is RedisException or RedisTimeoutException or NpgsqlException or SocketException or TimeoutException;
}
