using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using Heaveline.Cluster;
using Heaveline.Numerics;
using Heaveline.Pieces;

namespace Heaveline.Bench;

/// <summary>
/// How long the pieces wait that a machine has in hand when it is killed: they are done by the others, and of all that were out at the kill the
/// last one to come back says when. As many lengths of a piece as it waited, beside the seconds.
/// </summary>
internal static class KilledHelper
{
    /// <summary>The word by which this program is started as a machine that helps.</summary>
    public const string Word = "helps-until-killed";

    private const int Length = 50;
    private const int Count = 1200;

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
        var (code, said) = (StudyCode.Fresh(), new ConcurrentQueue<string>());
        var study = HelpedStudy.Open(
            new HelpedAsked
            {
                At = new IPEndPoint(IPAddress.Loopback, 0), Code = code, Texts = [], Hash = "", Program = "1", Machine = "study", Threads = 1,
            },
            said.Enqueue,
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

        var (done, kill, last) = (0, 0L, 0L);
        var began = Stopwatch.GetTimestamp();
        ParallelLoop.Each(Count, HelpedStudy.PiecesAtOnce, k =>
        {
            var begun = Stopwatch.GetTimestamp();
            doer.Do(BitConverter.GetBytes(k), CancellationToken.None);
            if (Interlocked.Increment(ref done) == Count / 4)
            {
                Interlocked.Exchange(ref kill, Stopwatch.GetTimestamp());
                killed.Kill();
            }

            // Of those that were out when it was killed, the last to come back.
            var at = Interlocked.Read(ref kill);
            if (at != 0L && begun < at)
            {
                var now = Stopwatch.GetTimestamp();
                for (var seen = Interlocked.Read(ref last); seen < now && Interlocked.CompareExchange(ref last, now, seen) != seen;)
                {
                    seen = Interlocked.Read(ref last);
                }
            }
        }, CancellationToken.None);
        var whole = Stopwatch.GetElapsedTime(began).TotalSeconds;
        var stood = Stopwatch.GetElapsedTime(kill, last).TotalSeconds;
        study.DisposeAsync().AsTask().GetAwaiter().GetResult();
        other.Wait();
        killed.WaitForExit();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"pieces of {Length} ms, one of 3 machines killed: the last of its pieces was done by the others {stood:0.0} s later, "
            + $"{1000.0 * stood / Length:0} times a piece; all {Count} pieces took {whole / (Count * Length / 3000.0):0.00} times "
            + $"what three machines take that nobody kills"));
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
