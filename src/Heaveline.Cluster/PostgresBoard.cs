using Npgsql;

namespace Heaveline.Cluster;

/// <summary>Notices in PostgreSQL, in a table of our own that is made where it is not there.</summary>
/// <param name="connection">Words to connect by.</param>
/// <param name="crew">Whose they are.</param>
internal sealed class PostgresBoard(string connection, string crew) : INoticeBoard
{
    private readonly NpgsqlDataSource source = NpgsqlDataSource.Create(connection);
    private bool isMade;

    /// <inheritdoc/>
    public async Task Put(string name, string words, TimeSpan stays)
    {
        await Run("delete from heaveline_notices where crew = $1 and until < now()", crew).ConfigureAwait(false);
        await Run(
            """
            insert into heaveline_notices values ($1, $2, $3, now() + $4)
            on conflict (crew, name) do update set noted = excluded.noted, until = excluded.until
            """,
            crew, name, words, stays).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public Task Take(string name) => Run("delete from heaveline_notices where crew = $1 and name = $2", crew, name);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<string>> All()
    {
        await using var command = await Command("select noted from heaveline_notices where crew = $1 and until >= now()", crew).ConfigureAwait(false);
        await using var reader = await command.ExecuteReaderAsync().ConfigureAwait(false);
        var all = new List<string>();
        while (await reader.ReadAsync().ConfigureAwait(false))
        {
            all.Add(reader.GetString(0));
        }

        return all;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => source.DisposeAsync();

    private async Task Run(string sql, params object[] values)
    {
        await using var command = await Command(sql, values).ConfigureAwait(false);
        await command.ExecuteNonQueryAsync().ConfigureAwait(false);
    }

    private async Task<NpgsqlCommand> Command(string sql, params object[] values)
    {
        if (!isMade)
        {
            // Two who make it at once: the second waits for the first.
            await using var making = source.CreateCommand(
                $"""
                select pg_advisory_lock({PostgresMembership.Making});
                create table if not exists heaveline_notices (
                    crew text not null, name text not null, noted text not null, until timestamptz not null, primary key (crew, name));
                select pg_advisory_unlock({PostgresMembership.Making});
                """);
            await making.ExecuteNonQueryAsync().ConfigureAwait(false);
            isMade = true;
        }

        var command = source.CreateCommand(sql);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        return command;
    }
}
