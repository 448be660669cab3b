using System.Globalization;
using System.Net;
using Heaveline.Cluster;
using Heaveline.Quantities;
using Npgsql;
using StackExchange.Redis;

namespace Heaveline.Tests.Cluster;

/// <summary>The databases of a laboratory, started by the tests themselves.</summary>
[Collection(SeveralMachines.Name)]
public class MembershipTests
{
    [Fact]
    public async Task Three_machines_that_are_noted_in_redis_do_a_study()
    {
        using var server = await OwnServer.Redis();
        var at = string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{server.Port}");
        await Done(Membership.Of($"redis {at}"));
        // Nothing of the study stays there.
        await using var session = await ConnectionMultiplexer.ConnectAsync(at);
        Assert.Empty(session.GetServer(at).Keys());
    }

    [Fact]
    public async Task Three_machines_that_are_noted_in_postgresql_do_a_study()
    {
        using var server = await OwnServer.Postgres();
        await Done(Membership.Of($"postgres {Words(server)}"));
        // Nothing of the study stays there.
        await using var session = new NpgsqlConnection(Words(server));
        await session.OpenAsync(TestContext.Current.CancellationToken);
        await using var left = new NpgsqlCommand(
            "select (select count(*) from heaveline_clusters) + (select count(*) from heaveline_machines)", session);
        Assert.Equal(0L, await left.ExecuteScalarAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Of_two_changes_made_at_once_one_counts_and_what_was_noted_comes_back_whole()
    {
        using var server = await OwnServer.Postgres();
        var (one, other) = (new PostgresMembership(Words(server), "a"), new PostgresMembership(Words(server), "b"));
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => one.InitializeMembershipTable(true)).Append(other.InitializeMembershipTable(true)));
        var table = await one.ReadAll();
        Assert.Empty(table.Members);
        var entry = Entry(5001);
        Assert.True(await one.InsertRow(entry, table.Version.Next()));
        // Of the version that is no more.
        Assert.False(await one.InsertRow(Entry(5002), table.Version.Next()));
        table = await one.ReadAll();
        Assert.False(await one.InsertRow(entry, table.Version.Next()));
        Assert.True(await one.InsertRow(Entry(5002), table.Version.Next()));
        table = await one.ReadAll();
        var (back, etag) = table.Members.Single(m => m.Item1.SiloAddress.Equals(entry.SiloAddress));
        Assert.Equal(
            (entry.Status, entry.HostName, entry.SiloName, entry.StartTime, entry.IAmAliveTime),
            (back.Status, back.HostName, back.SiloName, back.StartTime, back.IAmAliveTime));
        Assert.Equal(entry.SuspectTimes, back.SuspectTimes);
        back.Status = SiloStatus.Dead;
        Assert.True(await one.UpdateRow(back, etag, table.Version.Next()));
        table = await one.ReadAll();
        Assert.False(await one.UpdateRow(back, etag, table.Version.Next()));
        back.IAmAliveTime = back.IAmAliveTime.AddMinutes(1.0);
        await one.UpdateIAmAlive(back);
        var row = await one.ReadRow(back.SiloAddress);
        Assert.Equal((SiloStatus.Dead, back.IAmAliveTime), (row.Members[0].Item1.Status, row.Members[0].Item1.IAmAliveTime));
        Assert.Single(row.Members);
        Assert.Equal(2, (await one.ReadAll()).Members.Count);
        Assert.Empty((await other.ReadAll()).Members);
        await one.CleanupDefunctSiloEntries(DateTimeOffset.UtcNow.AddDays(1.0));
        // Whoever was at work stays.
        Assert.Equal(SiloStatus.Active, Assert.Single((await one.ReadAll()).Members).Item1.Status);
    }

    [Theory]
    [InlineData("")]
    [InlineData("mongo 127.0.0.1")]
    public void Other_databases_are_refused(string words) =>
        Assert.Contains("redis HOST:PORT", Assert.Throws<RefusedValueException>(() => Membership.Of(words)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("postgres Host=127.0.0.1;Database=lab;Password=harebell")]
    [InlineData("postgres Host=127.0.0.1;pwd=harebell")]
    [InlineData("redis 127.0.0.1:6379,password=harebell")]
    [InlineData("redis 127.0.0.1:6379, Password = harebell")]
    [InlineData("postgres harebell")]
    [InlineData("redis 127.0.0.1:6379,secret=harebell")]
    public void Words_with_a_password_in_them_are_refused_without_saying_it_again(string words)
    {
        var refused = Assert.Throws<RefusedValueException>(() => Membership.Of(words));
        Assert.DoesNotContain("harebell", refused.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_password_of_redis_is_taken_from_its_variable()
    {
        Environment.SetEnvironmentVariable("REDISCLI_AUTH", "harebell");
        try
        {
            Assert.Equal("harebell", Membership.Of("redis 127.0.0.1:1").Redis!.Password);
        }
        finally
        {
            Environment.SetEnvironmentVariable("REDISCLI_AUTH", null);
        }
    }

    private static async Task Done(Membership membership)
    {
        const int count = 2500;
        await using var study = await OneStudy.Open(membership);
        var gate = new TaskCompletionSource();
        var run = study.Run(new MadeUpPieces(15) { Gate = gate.Task }, count);
        _ = study.Help("birch", new MadeUpPieces(15));
        _ = study.Help("cedar", new MadeUpPieces(15));
        await study.Hears("'birch' helps");
        await study.Hears("'cedar' helps");
        gate.SetResult();
        var answers = await run;
        Assert.Equal(Enumerable.Range(0, count).Select(k => MadeUpPieces.Answer(MadeUpPieces.Piece(k))), answers);
        Assert.Equal(["birch", "cedar"], study.Helped.Where(one => one.Pieces > 0).Select(one => one.Machine).Order());
    }

    private static string Words(OwnServer server) => string.Create(
        CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={server.Port};Username=heaveline;Database=postgres");

    private static MembershipEntry Entry(int port) => new()
    {
        SiloAddress = SiloAddress.New(new IPEndPoint(IPAddress.Loopback, port), 7),
        Status = SiloStatus.Active,
        HostName = "birch",
        SiloName = "silo",
        StartTime = new DateTime(2026, 11, 3, 4, 5, 6, DateTimeKind.Utc),
        IAmAliveTime = new DateTime(2026, 11, 3, 4, 6, 6, DateTimeKind.Utc),
        SuspectTimes =
        [
            Tuple.Create(SiloAddress.New(new IPEndPoint(IPAddress.Loopback, 5003), 8), new DateTime(2026, 11, 3, 4, 7, 6, DateTimeKind.Utc)),
        ],
    };
}
