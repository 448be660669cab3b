using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using Heaveline.Cluster;
using Heaveline.Numerics;
using Heaveline.Pieces;

namespace Heaveline.Bench;

/// <summary>
/// How long it takes until a machine that helps and is killed is given up, from when on the pieces that it had in hand are done by the others: beside
/// the seconds as many lengths of a piece, and how much longer the whole takes than if it had been given up at once.
/// </summary>
internal static class KilledHelper
{
    /// <summary>The word by which this program is started as a machine that helps.</summary>
    public const string Word = "helps-until-killed";

    private const int Length = 50;
    private const int Count = 1200;
    private const double Before = 0.25;
    private const double Machines = 3.0;

    /// <summary>As the machine that is killed.</summary>
    public static int Help(string port, string code)
    {
        Cluster.Help.Out(
            new HelpAsked
            {
                Host = "127.0.0.1", Port = int.Parse(port, CultureInfo.InvariantCulture), Code = code, Program = "1", Machine = "killed", Threads = 1,
                Reads = (_, _) => new Sleeping(),
            },
            _ => { },
            CancellationToken.None).GetAwaiter().GetResult();
        return 0;
    }

    /// <summary>Measures it.</summary>
    public static void Run()
    {
        var (code, said) = (StudyCode.Fresh(), new ConcurrentQueue<(string Words, long At)>());
        var study = HelpedStudy.Open(
            new HelpedAsked
            {
                At = new IPEndPoint(IPAddress.Loopback, 0), Code = code, Texts = [], Hash = "", Program = "1", Machine = "study", Threads = 1,
            },
            words => said.Enqueue((words, Stopwatch.GetTimestamp())),
            CancellationToken.None).GetAwaiter().GetResult();
        var doer = study.Through(new Sleeping());
        ParallelLoop.Each(8, 8, k => doer.Do(BitConverter.GetBytes(-1 - k), CancellationToken.None), CancellationToken.None);
        var other = Task.Run(() => Cluster.Help.Out(
            new HelpAsked
            {
                Host = "127.0.0.1", Port = study.At.Port, Code = code, Program = "1", Machine = "stays", Threads = 1,
                Reads = (_, _) => new Sleeping(),
            },
            _ => { },
            CancellationToken.None));
        using var killed = Process.Start(Environment.ProcessPath!, [Word, $"{study.At.Port}", code]);
        while (said.Count < 2)
        {
            Thread.Sleep(100);
        }

        var (done, kill) = (0, 0L);
        var began = Stopwatch.GetTimestamp();
        ParallelLoop.Each(Count, HelpedStudy.PiecesAtOnce, k =>
        {
            doer.Do(BitConverter.GetBytes(k), CancellationToken.None);
            if (Interlocked.Increment(ref done) == (int)(Before * Count))
            {
                Interlocked.Exchange(ref kill, Stopwatch.GetTimestamp());
                killed.Kill();
            }
        }, CancellationToken.None);
        var whole = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var stood = Stopwatch.GetElapsedTime(kill, said.First(one => one.Words.Contains("does not answer any more", StringComparison.Ordinal)).At)
            .TotalSeconds;
        var ideal = Count * Length / 1000.0 * ((Before / Machines) + ((1.0 - Before) / (Machines - 1.0)));
        study.DisposeAsync().AsTask().GetAwaiter().GetResult();
        other.Wait();
        killed.WaitForExit();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"pieces of {Length} ms, one of {Machines:0} machines killed: given up after {stood:0.0} s, {1000.0 * stood / Length:0} times a piece; "
            + $"all {Count} pieces took {whole / ideal:0.00} times as long as if it had been given up at once"));
    }

    private sealed class Sleeping : IPieceDoer
    {
        public byte[] Do(byte[] piece, CancellationToken cancellation)
        {
            Thread.Sleep(Length);
            return new byte[64];
        }
    }
}
