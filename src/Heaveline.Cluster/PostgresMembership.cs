using System.Globalization;
using System.Text.Json.Nodes;
using Npgsql;

namespace Heaveline.Cluster;

/// <summary>
/// Which machines are there, noted in PostgreSQL, in two tables of our own that are made where they are not there. Every change takes the version of
/// the whole along: of two that were made at once one counts, and the other is made anew by whoever made it.
/// </summary>
/// <param name="connection">Words to connect by.</param>
/// <param name="cluster">The cluster.</param>
internal sealed class PostgresMembership(string connection, string cluster) : IMembershipTable
{
    /// <summary>A number of our own for the lock under which tables are made.</summary>
    public const long Making = 0x4845415645;

    /// <inheritdoc/>
    public async Task InitializeMembershipTable(bool tryInitTableVersion)
    {
        await using var session = await Open().ConfigureAwait(false);
        await using var all = await session.BeginTransactionAsync().ConfigureAwait(false);
        await Run(session, $"select pg_advisory_xact_lock({Making})").ConfigureAwait(false);
        await Run(
            session,
            """
            create table if not exists heaveline_clusters (cluster text primary key, version integer not null);
            create table if not exists heaveline_machines (
                cluster text not null, machine text not null, noted text not null, version integer not null, alive timestamptz not null,
                primary key (cluster, machine));
            """).ConfigureAwait(false);
        await Run(session, "insert into heaveline_clusters values ($1, 0) on conflict do nothing", cluster).ConfigureAwait(false);
        await all.CommitAsync().ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async Task DeleteMembershipTableEntries(string clusterId)
    {
        await using var session = await Open().ConfigureAwait(false);
        await Run(session, "delete from heaveline_machines where cluster = $1", clusterId).ConfigureAwait(false);
        await Run(session, "delete from heaveline_clusters where cluster = $1", clusterId).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async Task CleanupDefunctSiloEntries(DateTimeOffset beforeDate)
    {
        var (rows, _) = await Read(null).ConfigureAwait(false);
        await using var session = await Open().ConfigureAwait(false);
        foreach (var (entry, _) in rows.Where(row => row.Item1.Status != SiloStatus.Active && row.Item1.IAmAliveTime < beforeDate.UtcDateTime))
        {
            await Run(
                session, "delete from heaveline_machines where cluster = $1 and machine = $2", cluster, entry.SiloAddress.ToParsableString())
                .ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public async Task<MembershipTableData> ReadRow(SiloAddress key)
    {
        var (rows, version) = await Read(key).ConfigureAwait(false);
        return new MembershipTableData(rows, version);
    }

    /// <inheritdoc/>
    public async Task<MembershipTableData> ReadAll()
    {
        var (rows, version) = await Read(null).ConfigureAwait(false);
        return new MembershipTableData(rows, version);
    }

    /// <inheritdoc/>
    public Task<bool> InsertRow(MembershipEntry entry, TableVersion tableVersion) => Changed(
        tableVersion,
        "insert into heaveline_machines values ($1, $2, $3, 0, $4) on conflict do nothing",
        cluster, entry.SiloAddress.ToParsableString(), Words(entry), Utc(entry.IAmAliveTime));

    /// <inheritdoc/>
    public Task<bool> UpdateRow(MembershipEntry entry, string etag, TableVersion tableVersion) => Changed(
        tableVersion,
        "update heaveline_machines set noted = $3, alive = $4, version = version + 1 where cluster = $1 and machine = $2 and version = $5",
        cluster, entry.SiloAddress.ToParsableString(), Words(entry), Utc(entry.IAmAliveTime), int.Parse(etag, CultureInfo.InvariantCulture));

    /// <inheritdoc/>
    public async Task UpdateIAmAlive(MembershipEntry entry)
    {
        await using var session = await Open().ConfigureAwait(false);
        await Run(
            session, "update heaveline_machines set alive = $3 where cluster = $1 and machine = $2",
            cluster, entry.SiloAddress.ToParsableString(), Utc(entry.IAmAliveTime)).ConfigureAwait(false);
    }

    private async Task<bool> Changed(TableVersion next, string sql, params object[] values)
    {
        await using var session = await Open().ConfigureAwait(false);
        await using var all = await session.BeginTransactionAsync().ConfigureAwait(false);
        var before = int.Parse(next.VersionEtag, CultureInfo.InvariantCulture);
        if (await Run(
                session, "update heaveline_clusters set version = $2 where cluster = $1 and version = $3", cluster, next.Version, before)
                .ConfigureAwait(false) != 1
            || await Run(session, sql, values).ConfigureAwait(false) != 1)
        {
            await all.RollbackAsync().ConfigureAwait(false);
            return false;
        }

        await all.CommitAsync().ConfigureAwait(false);
        return true;
    }

    private async Task<(List<Tuple<MembershipEntry, string>> Rows, TableVersion Version)> Read(SiloAddress? only)
    {
        await using var session = await Open().ConfigureAwait(false);
        // One statement, so that version and rows are of one moment.
        await using var command = new NpgsqlCommand(
            """
            select c.version, m.noted, m.version, m.alive from heaveline_clusters c
            left join heaveline_machines m on m.cluster = c.cluster and ($2 = '' or m.machine = $2) where c.cluster = $1
            """,
            session);
        command.Parameters.Add(new NpgsqlParameter { Value = cluster });
        command.Parameters.Add(new NpgsqlParameter { Value = only?.ToParsableString() ?? "" });
        await using var reader = await command.ExecuteReaderAsync().ConfigureAwait(false);
        var (rows, version) = (new List<Tuple<MembershipEntry, string>>(), 0);
        while (await reader.ReadAsync().ConfigureAwait(false))
        {
            version = reader.GetInt32(0);
            if (!reader.IsDBNull(1))
            {
                rows.Add(Tuple.Create(
                    Entry(reader.GetString(1), reader.GetDateTime(3)), reader.GetInt32(2).ToString(CultureInfo.InvariantCulture)));
            }
        }

        return (rows, new TableVersion(version, version.ToString(CultureInfo.InvariantCulture)));
    }

    private static string Words(MembershipEntry entry) => new JsonObject
    {
        ["silo"] = entry.SiloAddress.ToParsableString(),
        ["status"] = (int)entry.Status,
        ["port"] = entry.ProxyPort,
        ["host"] = entry.HostName,
        ["name"] = entry.SiloName,
        ["start"] = entry.StartTime.ToString("O", CultureInfo.InvariantCulture),
        ["suspects"] = new JsonArray([.. (entry.SuspectTimes ?? []).Select(one => (JsonNode)new JsonArray(
            JsonValue.Create(one.Item1.ToParsableString()), JsonValue.Create(one.Item2.ToString("O", CultureInfo.InvariantCulture))))]),
    }.ToJsonString();

    private static MembershipEntry Entry(string words, DateTime alive)
    {
        var noted = JsonNode.Parse(words)!;
        return new MembershipEntry
        {
            SiloAddress = SiloAddress.FromParsableString(noted["silo"]!.GetValue<string>()),
            Status = (SiloStatus)noted["status"]!.GetValue<int>(),
            ProxyPort = noted["port"]!.GetValue<int>(),
            HostName = noted["host"]?.GetValue<string>() ?? "",
            SiloName = noted["name"]?.GetValue<string>() ?? "",
            StartTime = Moment(noted["start"]),
            IAmAliveTime = alive.ToUniversalTime(),
            SuspectTimes =
            [
                .. noted["suspects"]!.AsArray().Select(
                    one => Tuple.Create(SiloAddress.FromParsableString(one![0]!.GetValue<string>()), Moment(one[1]))),
            ],
        };
    }

    private static DateTime Moment(JsonNode? words) =>
        DateTime.Parse(words!.GetValue<string>(), CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal);

    private static DateTime Utc(DateTime moment) => DateTime.SpecifyKind(moment, DateTimeKind.Utc);

    private async Task<NpgsqlConnection> Open()
    {
        var session = new NpgsqlConnection(connection);
        await session.OpenAsync().ConfigureAwait(false);
        return session;
    }

    private static async Task<int> Run(NpgsqlConnection session, string sql, params object[] values)
    {
        await using var command = new NpgsqlCommand(sql, session);
        foreach (var value in values)
        {
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        }

        return await command.ExecuteNonQueryAsync().ConfigureAwait(false);
    }
}
