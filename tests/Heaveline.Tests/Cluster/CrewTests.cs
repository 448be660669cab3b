using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using Heaveline.Cluster;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Pieces;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cluster;

/// <summary>Machines that stand by for a crew, with a database of the test's own.</summary>
[Collection(SeveralMachines.Name)]
public class CrewTests
{
    [Fact]
    public async Task Studies_share_the_machines_that_stand_by_noted_in_redis()
    {
        using var server = await OwnServer.Redis();
        await Shared(Redis(server));
    }

    [Fact]
    public async Task Studies_share_the_machines_that_stand_by_noted_in_postgresql()
    {
        using var server = await OwnServer.Postgres();
        await Shared(Postgres(server));
    }

    [Fact]
    public async Task A_notice_goes_by_itself_is_taken_down_and_is_seen_by_its_own_crew_alone()
    {
        using var redis = await OwnServer.Redis();
        using var postgres = await OwnServer.Postgres();
        foreach (var at in new[] { Redis(redis), Postgres(postgres) })
        {
            var crew = Of(at);
            await using var board = NoticeBoard.Of(crew);
            await using var beside = NoticeBoard.Of(crew);
            await using var other = NoticeBoard.Of(Of(at));
            await Task.WhenAll(board.Put("a", "one", TimeSpan.FromMinutes(5.0)), beside.Put("b", "two", TimeSpan.FromMinutes(5.0)));
            await board.Put("a", "once more", TimeSpan.FromMinutes(5.0));
            Assert.Equal(["once more", "two"], (await board.All()).Order());
            Assert.Empty(await other.All());
            await beside.Take("a");
            Assert.Equal(["two"], await board.All());
            await board.Put("b", "two", TimeSpan.FromMilliseconds(200.0));
            for (var k = 0; k < 600 && (await beside.All()).Count > 0; k++)
            {
                await Task.Delay(100, TestContext.Current.CancellationToken);
            }

            Assert.Empty(await beside.All());
        }
    }

    [Fact]
    public async Task Who_has_another_heaveline_says_so_and_is_named_where_the_study_begins()
    {
        using var server = await OwnServer.Redis();
        var crew = Of(Redis(server));
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var standing = Standing(crew, "birch", said, stop.Token, program: "2");
        await Noted(crew, 1);
        await using var study = await Begun.At(crew, "oak");
        Assert.Contains("of the crew 'lab' nobody stands by with this Heaveline; whoever comes is let help. 'birch' has another Heaveline than this, "
            + "1, and cannot help.", study.Said);
        await Hears(said, "The study at 'oak' is worked out by Heaveline 1, this is 2: it goes on without this machine.");
        await stop.CancelAsync();
        await standing;
        Assert.Empty(study.Study.Helped);
    }

    [Fact]
    public async Task Where_the_database_cannot_be_asked_a_machine_says_so_once_and_waits_and_a_study_is_not_begun()
    {
        using var silent = new SilentServer();
        var crew = Of(Postgres(silent.Port));
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var standing = Standing(crew, "birch", said, stop.Token);
        await Hears(said, "The database cannot be asked: ");
        // Asked again and again, in rounds of one and the same number of calls.
        var once = silent.Calls;
        await silent.IsCalled(4 * once);
        var none = await Assert.ThrowsAsync<RunFailedException>(() => Begun.At(crew, "oak"));
        Assert.Contains("The database of the crew 'lab' cannot be asked", none.Message, StringComparison.Ordinal);
        await stop.CancelAsync();
        await standing;
        Assert.StartsWith(
            $"The database cannot be asked: no database answers at 127.0.0.1:{silent.Port}",
            Assert.Single(said, one => one.Contains("cannot be asked", StringComparison.Ordinal)),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task That_no_redis_answers_is_said_in_plain_words()
    {
        using var silent = new SilentServer();
        var none = await Assert.ThrowsAsync<RunFailedException>(() => Begun.At(
            Of(Membership.Of(string.Create(CultureInfo.InvariantCulture, $"redis 127.0.0.1:{silent.Port}"))), "oak"));
        Assert.StartsWith(
            $"The database of the crew 'lab' cannot be asked: no database answers at 127.0.0.1:{silent.Port}", none.Message,
            StringComparison.Ordinal);
        Assert.DoesNotContain("abortConnect", none.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rubbish")]
    [InlineData("[]")]
    [InlineData("{\"study\":1}")]
    [InlineData("{\"study\":\"\",\"machine\":\"a\"}")]
    [InlineData("{\"study\":\"a\",\"study\":\"b\"}")]
    public void What_is_no_notice_is_none(string words) => Assert.Null(CrewNotice.Of(words));

    [Theory]
    [InlineData("0123456789abcdef0123456789abcdef", "192.168.1.5", 1, true)]
    [InlineData("0123456789abcdef0123456789abcdef", "fe80::1", 65535, true)]
    [InlineData("0123456789abcdef0123456789abcdef", "192.168.1.5", 0, false)]
    [InlineData("0123456789abcdef0123456789abcdef", "192.168.1.5", 65536, false)]
    [InlineData("0123456789abcdef0123456789abcdef", "example.org", 5091, false)]
    [InlineData("0123456789abcdef", "192.168.1.5", 5091, false)]
    [InlineData("0123456789abcdef0123456789abcde\n", "192.168.1.5", 5091, false)]
    public void A_study_is_noted_by_its_mark_an_address_and_a_port(string study, string host, int port, bool isOne)
    {
        var notice = new CrewNotice(study, "oak", "1", 0, host, port);
        Assert.Equal(isOne ? notice : null, CrewNotice.Of(notice.Words));
        Assert.Null(CrewNotice.Of((notice with { Host = "192.168.1.5", Machine = new string('a', 5000) }).Words));
    }

    [Fact]
    public async Task Who_writes_anything_on_the_board_takes_no_machine_down()
    {
        using var server = await OwnServer.Redis();
        var crew = Of(Redis(server));
        await using var board = NoticeBoard.Of(crew);
        await board.Put("a", "{\"study\":\"a\",\"study\":\"b\"}", TimeSpan.FromMinutes(5.0));
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var standing = Standing(crew, "birch", said, stop.Token, program: "2");
        await using var study = await Begun.At(crew, "oak");
        await Hears(said, "The study at 'oak' is worked out by Heaveline 1");
        await stop.CancelAsync();
        await standing;
    }

    [Fact]
    public async Task Who_cannot_keep_the_texts_of_a_study_says_so_and_stands_by_still()
    {
        using var server = await OwnServer.Redis();
        var crew = Of(Redis(server));
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var failures = new Queue<Exception>([new IOException("No space left."), new UnauthorizedAccessException("Not yours.")]);
        var standing = Standing(crew, "birch", said, stop.Token, reader: () => throw failures.Dequeue());
        await using var oak = await Begun.At(crew, "oak");
        await Hears(said, "The study at 'oak': this machine cannot help: No space left.");
        await using var elm = await Begun.At(crew, "elm");
        await Hears(said, "The study at 'elm': this machine cannot help: Not yours.");
        await Noted(crew, 3);
        Assert.False(standing.IsCompleted);
        await stop.CancelAsync();
        await standing;
        Assert.DoesNotContain(said, one => one.Contains("database", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_study_of_a_machine_of_the_same_name_is_left_to_it_and_that_is_said_once()
    {
        using var server = await OwnServer.Redis();
        var crew = Of(Redis(server));
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var standing = Standing(crew, "birch", said, stop.Token, program: "2");
        await using var own = await Begun.At(crew, "birch");
        await Hears(said, "The study at 'birch' was begun at a machine of this name and is left to it");
        // One that comes later is read in a later round.
        await using var other = await Begun.At(crew, "oak");
        await Hears(said, "The study at 'oak' is worked out by Heaveline 1");
        await stop.CancelAsync();
        await standing;
        Assert.Single(said, one => one.Contains("'birch' was begun", StringComparison.Ordinal));
        Assert.Empty(own.Study.Helped);
    }

    [Fact]
    public async Task A_failure_that_ends_the_standing_by_leaves_every_study_and_takes_the_notice_down()
    {
        using var server = await OwnServer.Redis();
        var crew = Of(Redis(server));
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var standing = Task.Run(() => StandBy.For(
            Asked(crew, "birch", "1", () => new Reader()),
            sentence =>
            {
                said.Enqueue(sentence);
                if (sentence.Contains("of this name", StringComparison.Ordinal))
                {
                    throw new InvalidOperationException("Nobody listens.");
                }
            },
            stop.Token));
        await using var oak = await Begun.At(crew, "oak");
        var gate = new TaskCompletionSource();
        var run = oak.Run(new MadeUpPieces(15) { Gate = gate.Task }, 600);
        await Hears(oak.Said, "'birch' helps");
        await using var own = await Begun.At(crew, "birch");
        await Assert.ThrowsAsync<InvalidOperationException>(
            () => standing.WaitAsync(TimeSpan.FromMinutes(2.0), TestContext.Current.CancellationToken));
        gate.SetResult();
        await run;
        // The two studies.
        await Noted(crew, 2);
    }

    [Theory]
    [InlineData("192.168.1.5", "127.0.1.1", "192.168.1.5")]
    [InlineData("192.168.1.5", "fe80::1", "192.168.1.5")]
    [InlineData("fe80::1", "::1", "127.0.0.1", "fe80::1")]
    [InlineData("127.0.0.1", "::1", "127.0.0.1")]
    public void A_study_is_noted_at_an_address_that_others_reach_where_the_database_has_one(string outward, params string[] found) =>
        Assert.Equal(IPAddress.Parse(outward), Crew.Outward([.. found.Select(IPAddress.Parse)]));

    [Fact]
    public void What_stands_on_the_board_comes_of_the_code_by_as_many_rounds_as_a_key_of_a_study()
    {
        var crew = Of(Membership.Own);
        var key = Rfc2898DeriveBytes.Pbkdf2(
            crew.Code.Replace("-", "", StringComparison.Ordinal), "heaveline crew code 1"u8, 600_000, HashAlgorithmName.SHA256, 32);
        Assert.Equal(Convert.ToHexStringLower(HMACSHA256.HashData(key, "heaveline crew"u8)[..8]), crew.Mark);
        Assert.NotEqual(crew.Mark, (crew with { Code = Crew.FreshCode() }).Mark);
    }

    [Theory]
    [InlineData("AAAA-AAAA-AAAA-AAAA-AAAA")]
    [InlineData("ABCD-EFGA-BCDE-FGAB-CDEF-GABC")]
    [InlineData("ABCD-EFGH-JKMN-PQRS-TUV")]
    public void A_code_that_is_short_or_of_few_signs_is_refused(string code)
    {
        Assert.False(Crew.IsHardToGuess(code));
        Assert.Throws<RefusedValueException>(() => Of(Membership.Own) with { Code = code });
    }

    [Fact]
    public void Nobody_stands_by_on_no_threads() => Assert.Throws<RefusedValueException>(
        () => Asked(Of(Membership.Own), "birch", "1", () => new Reader()) with { Threads = 0 });

    [Fact]
    public void A_code_of_a_crew_gives_each_study_its_own_and_is_in_no_notice()
    {
        var crew = Of(Membership.Own);
        var (one, other) = (CrewStudy.Fresh(crew), CrewStudy.Fresh(crew));
        Assert.NotEqual(one.Code, other.Code);
        Assert.Equal(one.Code, (crew with { Code = crew.Code.ToLowerInvariant().Replace("-", " ", StringComparison.Ordinal) }).CodeOf(one.Mark));
        Assert.Matches("^([A-HJ-NP-Z2-9]{4}-){3}[A-HJ-NP-Z2-9]{4}$", one.Code);
        Assert.True(Crew.IsHardToGuess(Crew.FreshCode()));
        Assert.False(Crew.IsHardToGuess(StudyCode.Fresh()));
    }

    private static async Task Shared(Membership at)
    {
        var crew = Of(at);
        using var stop = new CancellationTokenSource();
        var said = new ConcurrentQueue<string>();
        var standing = new[] { Standing(crew, "birch", said, stop.Token), Standing(crew, "cedar", said, stop.Token) };
        await Noted(crew, 2);
        await Task.WhenAll(Done("oak"), Done("ash"));
        // They stand by still.
        await Done("elm");
        await stop.CancelAsync();
        await Task.WhenAll(standing);
        await using var board = NoticeBoard.Of(crew);
        Assert.Empty(await board.All());

        async Task Done(string name)
        {
            const int count = 600;
            await using var study = await Begun.At(crew, name);
            Assert.Contains("of the crew 'lab' 'birch', 'cedar' stand by.", study.Said);
            var gate = new TaskCompletionSource();
            var run = study.Run(new MadeUpPieces(15) { Gate = gate.Task }, count);
            await Hears(study.Said, "'birch' helps");
            await Hears(study.Said, "'cedar' helps");
            gate.SetResult();
            Assert.Equal(Enumerable.Range(0, count).Select(k => MadeUpPieces.Answer(MadeUpPieces.Piece(k))), await run);
            Assert.Equal(["birch", "cedar"], study.Study.Helped.Where(one => one.Pieces > 0).Select(one => one.Machine).Order());
            await study.DisposeAsync();
            await Hears(said, $"The study at '{name}': it has ended.");
        }
    }

    private static Crew Of(Membership at) => new() { Name = "lab", NotedIn = at, Code = Crew.FreshCode() };

    private static Membership Redis(OwnServer server) => Membership.Of(string.Create(CultureInfo.InvariantCulture, $"redis 127.0.0.1:{server.Port}"));

    private static Membership Postgres(OwnServer server) => Postgres(server.Port);

    private static Membership Postgres(int port) => Membership.Of(string.Create(
        CultureInfo.InvariantCulture, $"postgres Host=127.0.0.1;Port={port};Username=heaveline;Database=postgres"));

    private static Task Standing(
        Crew crew, string name, ConcurrentQueue<string> said, CancellationToken stop, string program = "1", Func<IStudyReader>? reader = null) =>
        Task.Run(() => StandBy.For(Asked(crew, name, program, reader ?? (() => new Reader())), said.Enqueue, stop));

    private static StandByAsked Asked(Crew crew, string name, string program, Func<IStudyReader> reader) =>
        new() { Crew = crew, Program = program, Machine = name, Threads = 1, MostMissed = 60, Reader = reader };

    private static async Task Noted(Crew crew, int count)
    {
        await using var board = NoticeBoard.Of(crew);
        for (var k = 0; k < 1200 && (await board.All()).Count < count; k++)
        {
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        Assert.Equal(count, (await board.All()).Count);
    }

    private static async Task Hears(ConcurrentQueue<string> said, string words)
    {
        for (var k = 0; k < 1800 && !said.Any(one => one.Contains(words, StringComparison.Ordinal)); k++)
        {
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        Assert.Contains(said, one => one.Contains(words, StringComparison.Ordinal));
    }

    private sealed class Reader : IStudyReader
    {
        public IPieceDoer Read(byte[] texts, string hash) => new MadeUpPieces(15);

        public void Dispose()
        {
        }
    }

    // A study that was begun with a crew.
    private sealed class Begun(HelpedStudy study, CrewStudy told, ConcurrentQueue<string> said) : IAsyncDisposable
    {
        public HelpedStudy Study => study;

        public ConcurrentQueue<string> Said => said;

        public static async Task<Begun> At(Crew crew, string name)
        {
            var said = new ConcurrentQueue<string>();
            var (mark, code) = CrewStudy.Fresh(crew);
            var study = await HelpedStudy.Open(
                new HelpedAsked
                {
                    At = new IPEndPoint(IPAddress.Loopback, 0), Code = code, Texts = [1], Hash = "hash", Program = "1", Machine = name, Threads = 1,
                    MostMissed = 60,
                },
                said.Enqueue,
                TestContext.Current.CancellationToken);
            try
            {
                return new Begun(study, await CrewStudy.Open(crew, mark, study, name, "1", said.Enqueue), said);
            }
            catch
            {
                await study.DisposeAsync();
                throw;
            }
        }

        public Task<byte[][]> Run(IPieceDoer here, int count) => Task.Run(() =>
        {
            var (doer, answers) = (study.Through(here), new byte[count][]);
            ParallelLoop.Each(
                count, HelpedStudy.PiecesAtOnce, k => answers[k] = doer.Do(MadeUpPieces.Piece(k), CancellationToken.None),
                TestContext.Current.CancellationToken);
            return answers;
        });

        public async ValueTask DisposeAsync()
        {
            await told.DisposeAsync();
            await study.DisposeAsync();
        }
    }
}
