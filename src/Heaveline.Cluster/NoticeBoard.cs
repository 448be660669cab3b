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

    /// <summary>Whether a failure is the database's, or of the way there.</summary>
    public static bool IsSilence(Exception failure) =>
        failure is RedisException or RedisTimeoutException or NpgsqlException or SocketException or IOException or TimeoutException;
}
