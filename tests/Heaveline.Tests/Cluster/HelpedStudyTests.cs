using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Heaveline.Cluster;
using Heaveline.Passes;

namespace Heaveline.Tests.Cluster;

/// <summary>Machines that help with a study, and those that must not.</summary>
[Collection(SeveralMachines.Name)]
public class HelpedStudyTests
{
    private const int Count = 2500;

    [Fact]
    public async Task Machines_that_come_and_go_change_no_answer_and_do_nothing_twice_but_what_is_compared()
    {
        await using var study = await OneStudy.Open();
        var gate = new TaskCompletionSource();
        var (here, birch, cedar) = (new MadeUpPieces(15) { Gate = gate.Task }, new MadeUpPieces(15), new MadeUpPieces(15));
        var run = study.Run(here, Count);
        using var leave = new CancellationTokenSource();
        var leaving = study.Help("birch", birch, leave: leave.Token);
        await study.Hears("'birch' helps, on 1 thread.");
        var staying = study.Help("cedar", cedar);
        await study.Hears("'cedar' helps");
        gate.SetResult();
        while (birch.Done < 20)
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        await leave.CancelAsync();
        Assert.Equal(HelpEnd.Stopped, await leaving);
        await study.Hears("'birch' has left.");
        var answers = await run;
        Assert.Equal(Enumerable.Range(0, Count).Select(k => MadeUpPieces.Answer(MadeUpPieces.Piece(k))), answers);
        Assert.All(study.Helped, one => Assert.True(one.Pieces > 0, one.Machine));
        // Compared are the first of each machine and one in 64, offered was one to each; what was on its way to whoever left is done by others.
        Assert.InRange(here.Done + birch.Done + cedar.Done, Count, Count + 2 + 2 + (Count / 64) + 2 + 8);
        await study.DisposeAsync();
        Assert.Equal(HelpEnd.Over, await staying);
    }

    [Fact]
    public async Task Whoever_has_another_code_another_program_or_works_out_other_bits_is_refused_by_name()
    {
        await using var study = await OneStudy.Open();
        var gate = new TaskCompletionSource();
        var run = study.Run(new MadeUpPieces(10) { Gate = gate.Task }, 400);
        var code = await Assert.ThrowsAsync<RunFailedException>(() => study.Help("rowan", new MadeUpPieces(0), code: StudyCode.Fresh()));
        Assert.Contains("a study that has another code, or another program", code.Message, StringComparison.Ordinal);
        var program = await Assert.ThrowsAsync<RunFailedException>(() => study.Help("rowan", new MadeUpPieces(0), program: "2"));
        Assert.Contains("worked out by Heaveline 1, this is 2", program.Message, StringComparison.Ordinal);
        var bits = await Assert.ThrowsAsync<RunFailedException>(() => study.Help("rowan", new MadeUpPieces(0) { WrongFrom = 0 }));
        Assert.Contains("'rowan' works out other bits than 'study'", bits.Message, StringComparison.Ordinal);
        gate.SetResult();
        Assert.Equal(Enumerable.Range(0, 400).Select(k => MadeUpPieces.Answer(MadeUpPieces.Piece(k))), await run);
        Assert.Empty(study.Helped);
    }

    [Fact]
    public async Task A_machine_that_later_answers_otherwise_is_found_and_both_are_named()
    {
        await using var study = await OneStudy.Open();
        var gate = new TaskCompletionSource();
        var run = study.Run(new MadeUpPieces(15) { Gate = gate.Task }, 600);
        // Right at the piece that is offered and the first one that is compared, wrong from then on.
        var rowan = new MadeUpPieces(1) { WrongFrom = 3 };
        _ = study.Help("rowan", rowan);
        await study.Hears("'rowan' helps");
        gate.SetResult();
        var differs = await Assert.ThrowsAsync<RunFailedException>(() => run);
        // All that it did is taken back, what was right among it too.
        var taken = study.Withdrawn.Distinct().Count();
        Assert.InRange(taken, 65, rowan.Done);
        Assert.Contains($"none of the {taken} pieces that it did in this run is kept", differs.Message, StringComparison.Ordinal);
        Assert.Contains(
            "'rowan' and 'study', the machine of the study, worked out a piece of it differently", differs.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_machine_whose_own_work_fails_says_so_and_does_not_ask_for_ever()
    {
        await using var study = await OneStudy.Open();
        var gate = new TaskCompletionSource();
        var run = study.Run(new MadeUpPieces(5) { Gate = gate.Task }, 100);
        var reading = await Assert.ThrowsAsync<InvalidOperationException>(() => study.Help("rowan", new OneStudy.NoPieces()));
        Assert.Contains("The texts cannot be read.", reading.Message, StringComparison.Ordinal);
        var doing = await Assert.ThrowsAsync<IOException>(() => study.Help("rowan", new MadeUpPieces(0) { FailsAt = 1 }));
        Assert.Contains("The disk of this machine is full.", doing.Message, StringComparison.Ordinal);
        gate.SetResult();
        Assert.Equal(100, (await run).Length);
    }

    [Fact]
    public async Task Threads_that_no_machine_has_are_refused_and_what_a_name_would_do_to_a_terminal_is_taken_out()
    {
        await using var study = await OneStudy.Open();
        var gate = new TaskCompletionSource();
        var run = study.Run(new MadeUpPieces(5) { Gate = gate.Task }, 100);
        var many = await Assert.ThrowsAsync<RunFailedException>(() => study.Help("row\u001b[2Jan\r\u202e", new MadeUpPieces(0), threads: 1025));
        Assert.Equal("'row?[2Jan??' would help on 1025 threads: from 1 to 1024 are taken.", many.Message.Trim());
        Assert.Contains("'row?[2Jan??' would help, but on 1025 threads.", study.Said);
        Assert.Equal(new string('a', 64) + "…", PlainWords.Name(new string('a', 100_000)));
        gate.SetResult();
        await run;
        Assert.Empty(study.Helped);
    }

    [Fact]
    public async Task A_machine_that_is_still_joining_when_the_study_ends_is_told_and_leaves()
    {
        await using var study = await OneStudy.Open();
        await study.Run(new MadeUpPieces(0), 20);
        // It would be at its first piece for ten minutes.
        var joining = study.Help("larch", new MadeUpPieces(600_000));
        await study.IsTold("Joining: a piece whose answer is known is done here first.");
        await study.DisposeAsync();
        Assert.Equal(HelpEnd.Over, await joining);
        Assert.Empty(study.Helped);
    }

    [Fact]
    public async Task A_machine_whose_study_is_gone_before_it_has_joined_leaves_by_itself()
    {
        var code = StudyCode.Fresh();
        using var certificate = StudyCode.Keys(code, DateTimeOffset.UtcNow).Certificate;
        using var listener = new TcpListener(System.Net.IPAddress.Loopback, 0);
        listener.Start();
        var port = ((System.Net.IPEndPoint)listener.LocalEndpoint).Port;
        var helping = Help.Out(
            new HelpAsked { Host = "127.0.0.1", Port = port, Code = code, Program = "1", Reads = (_, _) => new MadeUpPieces(0) },
            _ => { },
            TestContext.Current.CancellationToken);
        // It knocks, is answered by one that has the code, and then nobody is there any more.
        using (var socket = await listener.AcceptTcpClientAsync(TestContext.Current.CancellationToken))
        {
            await using var secured = new SslStream(socket.GetStream(), false, (_, other, _, _) => other is not null);
            await secured.AuthenticateAsServerAsync(certificate, clientCertificateRequired: true, checkCertificateRevocation: false);
            listener.Stop();
        }

        Assert.Equal(HelpEnd.Missed, await helping);
    }

    [Fact]
    public async Task After_the_last_open_study_the_process_has_as_many_common_threads_as_before()
    {
        var first = await OneStudy.Open();
        ThreadPool.GetMinThreads(out var open, out _);
        Assert.True(open >= HelpedStudy.PiecesAtOnce);
        await first.DisposeAsync();
        await first.DisposeAsync();
        ThreadPool.GetMinThreads(out var left, out _);
        Assert.True(left < open || PoolThreads.IsRaised, $"{left} of {open}");
    }

    [Fact]
    public async Task Who_has_not_the_key_of_the_code_is_not_spoken_to()
    {
        await using var study = await OneStudy.Open();
        Assert.Equal(0, await Heard(study, null));
        Assert.Equal(0, await Heard(study, StudyCode.Keys(StudyCode.Fresh(), DateTimeOffset.UtcNow).Certificate));
        Assert.True(await Heard(study, StudyCode.Keys(study.Code, DateTimeOffset.UtcNow).Certificate) > 0);
        using var plain = new TcpClient();
        await plain.ConnectAsync(study.At, TestContext.Current.CancellationToken);
        await plain.GetStream().WriteAsync(Encoding.ASCII.GetBytes("GET / HTTP/1.1\r\n\r\n"), TestContext.Current.CancellationToken);
        Assert.InRange(await Read(plain.GetStream()), 0, 7);
        // And it goes on.
        Assert.Equal([MadeUpPieces.Answer(MadeUpPieces.Piece(0))], await study.Run(new MadeUpPieces(0), 1));
    }

    [Fact]
    public async Task Where_nobody_listens_no_study_answers()
    {
        var none = await Assert.ThrowsAsync<RunFailedException>(() => Help.Out(
            new HelpAsked { Host = "127.0.0.1", Port = 9, Code = "ABCD-EFGH-JKMN", Program = "1", Reads = (_, _) => new MadeUpPieces(0) },
            _ => { },
            TestContext.Current.CancellationToken));
        Assert.Contains("No study answers at 127.0.0.1:9", none.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Case_blanks_and_dashes_of_a_code_do_not_matter_and_every_other_code_has_another_key()
    {
        var now = DateTimeOffset.UtcNow;
        var (one, cluster) = StudyCode.Keys("ABCD-EFGH-JKMN", now);
        Assert.True(StudyCode.IsSame(StudyCode.Keys("abcd efgh jkmn", now).Certificate, one));
        Assert.Equal(cluster, StudyCode.Keys("abcdefghjkmn", now).Cluster);
        Assert.False(StudyCode.IsSame(StudyCode.Keys("ABCD-EFGH-JKMP", now).Certificate, one));
        Assert.Matches("^([A-HJ-NP-Z2-9]{4}-){2}[A-HJ-NP-Z2-9]{4}$", StudyCode.Fresh());
        Assert.NotEqual(StudyCode.Fresh(), StudyCode.Fresh());
    }

    // A stranger that takes any certificate, and sends what a machine of the cluster sends first; how many bytes come back.
    private static async Task<int> Heard(OneStudy study, X509Certificate2? own)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(study.At, TestContext.Current.CancellationToken);
        await using var secured = new SslStream(socket.GetStream(), false, (_, other, _, _) => other is not null);
        try
        {
            await secured.AuthenticateAsClientAsync(
                new SslClientAuthenticationOptions { TargetHost = "heaveline", ClientCertificates = own is null ? null : [own] },
                TestContext.Current.CancellationToken);
            return await Read(secured);
        }
        catch (Exception refused) when (refused is IOException or AuthenticationException)
        {
            return 0;
        }
    }

    private static async Task<int> Read(Stream stream)
    {
        try
        {
            return await stream.ReadAsync(new byte[256], TestContext.Current.CancellationToken).AsTask().WaitAsync(TimeSpan.FromSeconds(60.0));
        }
        catch (Exception refused) when (refused is IOException or TimeoutException)
        {
            return 0;
        }
    }
}
