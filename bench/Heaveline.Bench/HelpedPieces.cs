using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using Heaveline.Cluster;
using Heaveline.Files.Keeping;
using Heaveline.Numerics;
using Heaveline.Pieces;

namespace Heaveline.Bench;

/// <summary>
/// What it costs to have pieces kept, and done by others, against pieces of 100 ms; and how many times as fast two and four machines of one thread
/// are as one. The machines are silos of this process; where there are fewer cores than machines, pieces that sleep stand for pieces that compute.
/// </summary>
internal static class HelpedPieces
{
    private const int Empty = 4000;
    private const double Usual = 100.0;

    public static int Run()
    {
        Console.WriteLine($"{Environment.ProcessorCount} cores; processor time of an empty piece, and its share of one of {Usual:0} ms:");
        var plain = PerPiece(new Sleeping(0));
        Say("in process", plain);
        using (var folder = new Folder())
        using (var file = PieceFile.Open(Path.Combine(folder.Path, "bench.pieces"), "bench", "1"))
        {
            Say("kept", PerPiece(new KeptPieces(new Sleeping(0), file)));
        }

        Say("open to others, nobody helps", Helped(0, 0, doer => PerPiece(doer)));
        Say("open to others, two help", Helped(2, 0, doer => PerPiece(doer)));
        foreach (var length in new[] { 20, 100 })
        {
            var one = Helped(0, length, doer => Wall(doer, 400));
            foreach (var others in new[] { 1, 3 })
            {
                var all = Helped(others, length, doer => Wall(doer, 400));
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"pieces of {length} ms, {others + 1} machines of one thread: {one / all:0.00} times as fast as one"));
            }
        }

        KilledHelper.Run();
        return 0;
    }

    private static void Say(string how, double milliseconds) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"  {how}: {milliseconds:0.000} ms, {100.0 * milliseconds / Usual:0.00} %"));

    private static double Helped(int others, int length, Func<IPieceDoer, double> measured)
    {
        var (code, said) = (StudyCode.Fresh(), new ConcurrentQueue<string>());
        var study = HelpedStudy.Open(
            new HelpedAsked
            {
                At = new IPEndPoint(IPAddress.Loopback, 0), Code = code, Texts = [], Hash = "", Program = "1", Machine = "study", Threads = 1,
            },
            said.Enqueue,
            CancellationToken.None).GetAwaiter().GetResult();
        var doer = study.Through(new Sleeping(length));
        // The first ones, without which nobody is let in.
        for (var k = 0; k < 8; k++)
        {
            doer.Do(Piece(-1 - k), CancellationToken.None);
        }

        var helping = Enumerable.Range(0, others).Select(k => Task.Run(() => Help.Out(
            new HelpAsked
            {
                Host = "127.0.0.1", Port = study.At.Port, Code = code, Program = "1", Machine = $"other {k}", Threads = 1,
                Reads = (_, _) => new Sleeping(length),
            },
            _ => { },
            CancellationToken.None))).ToArray();
        while (said.Count < others)
        {
            Thread.Sleep(100);
        }

        Wall(doer, 100);
        var number = measured(doer);
        study.DisposeAsync().AsTask().GetAwaiter().GetResult();
        Task.WaitAll(helping);
        return number;
    }

    private static double PerPiece(IPieceDoer doer)
    {
        var before = Processor();
        Wall(doer, Empty);
        return (Processor() - before) / Empty;
    }

    // Seconds.
    private static double Wall(IPieceDoer doer, int count)
    {
        var watch = Stopwatch.StartNew();
        ParallelLoop.Each(count, HelpedStudy.PiecesAtOnce, k => doer.Do(Piece(k), CancellationToken.None), CancellationToken.None);
        return watch.Elapsed.TotalSeconds;
    }

    // Milliseconds of all threads.
    private static double Processor()
    {
        using var own = Process.GetCurrentProcess();
        return own.TotalProcessorTime.TotalMilliseconds;
    }

    // As long as one of 32 setups.
    private static byte[] Piece(int number) => [.. BitConverter.GetBytes(number), .. new byte[261]];

    private sealed class Sleeping(int milliseconds) : IPieceDoer
    {
        private readonly byte[] answer = new byte[32 * 40 * sizeof(double)];

        public byte[] Do(byte[] piece, CancellationToken cancellation)
        {
            if (milliseconds > 0)
            {
                Thread.Sleep(milliseconds);
            }

            return answer;
        }
    }

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("heaveline-bench-").FullName;

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
