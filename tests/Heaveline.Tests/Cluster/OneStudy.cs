using System.Collections.Concurrent;
using System.Net;
using Heaveline.Cluster;
using Heaveline.Numerics;
using Heaveline.Pieces;

namespace Heaveline.Tests.Cluster;

/// <summary>A study that is open to others, and machines that help with it, all in this process, each a machine of its own to the others.</summary>
internal sealed class OneStudy : IAsyncDisposable
{
    // The others of the same process may have these stand still for seconds: none of them is to be taken for dead.
    private const int Patient = 60;

    private readonly CancellationTokenSource stop = new();
    private readonly List<Task<HelpEnd>> helping = [];
    private readonly Membership membership;
    private readonly HelpedStudy study;
    private bool isDisposed;

    private OneStudy(HelpedStudy study, string code, Membership membership, ConcurrentQueue<string> said) =>
        (this.study, Code, this.membership, Said) = (study, code, membership, said);

    public string Code { get; }

    /// <summary>What was said at the machine of the study.</summary>
    public ConcurrentQueue<string> Said { get; }

    /// <summary>What was said at the machines that help.</summary>
    public ConcurrentQueue<string> Told { get; } = [];

    public IPEndPoint At => study.At;

    public IReadOnlyList<(string Machine, int Pieces)> Helped => study.Helped;

    /// <summary>The pieces that were taken back.</summary>
    public ConcurrentQueue<byte[]> Withdrawn { get; } = [];

    public static async Task<OneStudy> Open(Membership? membership = null)
    {
        OneStudy? own = null;
        var (code, said) = (StudyCode.Fresh(), new ConcurrentQueue<string>());
        var study = await HelpedStudy.Open(
            new HelpedAsked
            {
                At = new IPEndPoint(IPAddress.Loopback, 0),
                Code = code,
                Membership = membership ?? Membership.Own,
                Texts = [1, 2, 3],
                Hash = "hash",
                Program = "1",
                Machine = "study",
                Threads = 1,
                MostMissed = Patient,
                Withdraw = pieces => pieces.ToList().ForEach(own!.Withdrawn.Enqueue),
            },
            said.Enqueue,
            TestContext.Current.CancellationToken);
        return own = new OneStudy(study, code, membership ?? Membership.Own, said);
    }

    /// <summary>A machine helps from now on.</summary>
    public Task<HelpEnd> Help(
        string machine, IPieceDoer doer, string program = "1", string? code = null, int threads = 1, CancellationToken leave = default)
    {
        var all = CancellationTokenSource.CreateLinkedTokenSource(stop.Token, leave);
        var help = Task.Run(() => Heaveline.Cluster.Help.Out(
            new HelpAsked
            {
                Host = "127.0.0.1",
                Port = study.At.Port,
                Code = code ?? Code,
                Membership = membership,
                Program = program,
                Machine = machine,
                Threads = threads,
                MostMissed = Patient,
                Reads = (texts, hash) => (texts, hash) is ([1, 2, 3], "hash") && doer is not NoPieces
                    ? doer
                    : throw new InvalidOperationException("The texts cannot be read."),
            },
            Told.Enqueue,
            all.Token));
        helping.Add(help);
        return help;
    }

    /// <summary>Has pieces done from now on; their answers in order.</summary>
    public Task<byte[][]> Run(IPieceDoer here, int count) => Task.Run(() =>
    {
        var (doer, answers) = (study.Through(here), new byte[count][]);
        ParallelLoop.Each(
            count, HelpedStudy.PiecesAtOnce, k => answers[k] = doer.Do(MadeUpPieces.Piece(k), CancellationToken.None),
            TestContext.Current.CancellationToken);
        return answers;
    });

    /// <summary>Waits until something was said.</summary>
    public Task Hears(string words) => Hears(Said, words);

    /// <summary>Waits until something was said at a machine that helps.</summary>
    public Task IsTold(string words) => Hears(Told, words);

    public async ValueTask DisposeAsync()
    {
        if (isDisposed)
        {
            return;
        }

        isDisposed = true;
        await study.DisposeAsync();
        await stop.CancelAsync();
        await Task.WhenAll(helping.Select(help => help.ContinueWith(_ => { }, TaskScheduler.Default)));
        stop.Dispose();
    }

    private static async Task Hears(ConcurrentQueue<string> said, string words)
    {
        for (var k = 0; k < 1800 && !said.Any(one => one.Contains(words, StringComparison.Ordinal)); k++)
        {
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }

        Assert.Contains(said, one => one.Contains(words, StringComparison.Ordinal));
    }

    /// <summary>Of a machine that cannot read the study.</summary>
    internal sealed class NoPieces : IPieceDoer
    {
        public byte[] Do(byte[] piece, CancellationToken cancellation) => throw new NotSupportedException();
    }
}
