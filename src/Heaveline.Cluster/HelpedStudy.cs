using System.Collections.Concurrent;
using System.Net;
using System.Security.Cryptography.X509Certificates;
using Heaveline.Passes;
using Heaveline.Pieces;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Heaveline.Cluster;

/// <summary>
/// A study whose pieces are done by this machine and by whoever helps. A piece whose machine does not answer is done by another; each goes out until
/// it is answered, so that nothing is lost, and one answer is taken. Now and then a piece is done here too and compared.
/// </summary>
public sealed class HelpedStudy : IAsyncDisposable
{
    /// <summary>How many pieces are asked for at once.</summary>
    public const int PiecesAtOnce = 64;

    /// <summary>The most threads that a machine lends; one that says more is not believed.</summary>
    public const int MostThreads = 1024;

    // So many on their way to a thread, that it never waits for the next one.
    private const int PerThread = 4;

    // Of so many answers of a machine one is worked out here too.
    private const int Checked = 64;

    // Of so many that were worked out first, the longest piece is what a machine must do too, to the same bits.
    private const int First = 8;

    // Fails so often in a row: its pieces go elsewhere, and it must ask again.
    private const int MostFailures = 40;

    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(1.0);
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(10.0);

    private readonly HelpedAsked asked;
    private readonly Action<string> say;
    private readonly SlotWork work;
    private readonly StudyAlarm alarm = new();
    private readonly BlockingCollection<(HelpingMachine? Machine, int Place)> places = [];
    private readonly ConcurrentDictionary<string, HelpingMachine> machines = new(StringComparer.Ordinal);
    private readonly ConcurrentQueue<HelpingMachine> all = [];
    private readonly ConcurrentDictionary<string, bool> told = new(StringComparer.Ordinal);
    private readonly List<(byte[] Piece, byte[] Answer)> first = [];
    private readonly Lock turn = new();
    private IHost? host;
    private X509Certificate2? certificate;
    private string cluster = "";
    private ISiloStatusOracle? statuses;
    private volatile bool isOpen = true;
    private int isDisposed;

    private HelpedStudy(HelpedAsked asked, Action<string> say)
    {
        (this.asked, this.say) = (asked, say);
        work = new SlotWork(asked.Threads);
        for (var k = 0; k < asked.Threads; k++)
        {
            places.Add((null, k));
        }
    }

    /// <summary>Where it listens.</summary>
    public IPEndPoint At { get; private set; } = new(IPAddress.Loopback, 0);

    /// <summary>The machines that help or have helped, and how many pieces each did.</summary>
    public IReadOnlyList<(string Machine, int Pieces)> Helped =>
        [.. all.GroupBy(m => m.Silo).Select(one => (one.First().Name, one.Sum(m => m.Answers)))];

    /// <summary>Opens a study to whoever has its code.</summary>
    /// <param name="asked">The study.</param>
    /// <param name="say">Told who comes and goes, a sentence.</param>
    /// <param name="cancellation">Stops the wait for its start.</param>
    /// <exception cref="RunFailedException">It cannot listen there.</exception>
    public static async Task<HelpedStudy> Open(HelpedAsked asked, Action<string> say, CancellationToken cancellation)
    {
        var study = new HelpedStudy(asked, say) { At = Ports.Free(asked.At) };
        PoolThreads.Raise(PiecesAtOnce + (4 * Environment.ProcessorCount));
        var keys = StudyCode.Keys(asked.Code, TimeProvider.System.GetUtcNow());
        study.certificate = keys.Certificate;
        study.cluster = keys.Cluster;
        try
        {
            study.host = Silos.Of(study.At, study.At, keys, asked.Membership, asked.MostMissed, study.work, study.alarm, study);
            await study.host.StartAsync(cancellation).ConfigureAwait(false);
            study.statuses = study.host.Services.GetRequiredService<ISiloStatusOracle>();
            var desk = study.host.Services.GetRequiredService<IGrainFactory>().GetGrain<IStudyDesk>(0);
            await Standing.At(study.host.Services.GetRequiredService<ILocalSiloDetails>().SiloAddress, () => desk.State("")).ConfigureAwait(false);
            return study;
        }
        catch (OperationCanceledException)
        {
            await study.DisposeAsync().ConfigureAwait(false);
            throw;
        }
        catch (Exception failure)
        {
            await study.DisposeAsync().ConfigureAwait(false);
            throw new RunFailedException(
                $"The study cannot be opened to others at {study.At}: {failure.GetBaseException().Message}",
                "Choose another port; where machines are noted in a database, look whether it answers.");
        }
    }

    /// <summary>Doing pieces here and elsewhere.</summary>
    /// <param name="here">Does them here.</param>
    public IPieceDoer Through(IPieceDoer here)
    {
        work.Begin(here);
        return new Shared(this);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref isDisposed, 1) != 0)
        {
            return;
        }

        isOpen = false;
        if (host is { } own)
        {
            // Whoever helps, or is about to, looks every second; who is killed is known to be dead within four.
            for (var until = Environment.TickCount64 + (long)Farewell.TotalMilliseconds; Environment.TickCount64 < until && Untold();)
            {
                await Task.Delay(100).ConfigureAwait(false);
            }

            await Ending.Of(own, () => Forgotten(own)).ConfigureAwait(false);
        }

        work.Dispose();
        certificate?.Dispose();
        PoolThreads.Lower();
    }

    /// <summary>What the study is, for a machine that would help.</summary>
    internal StudyOffer Offer(string machine, string program)
    {
        (machine, program) = (PlainWords.Name(machine), PlainWords.Name(program));
        // It looks again, and hears that the study has ended.
        if (!isOpen)
        {
            return new StudyOffer("", [], "", []);
        }

        if (program != asked.Program)
        {
            say($"'{machine}' would help, but has Heaveline {program}; this is {asked.Program}.");
            return new StudyOffer(
                $"The study at '{asked.Machine}' is worked out by Heaveline {asked.Program}, this is {program}: take the same one.", [], "", []);
        }

        return new StudyOffer("", asked.Texts, asked.Hash, Known()?.Piece ?? []);
    }

    /// <summary>Lets a machine help; says why not.</summary>
    internal string Enter(string silo, string machine, int threads, byte[] answer)
    {
        machine = PlainWords.Name(machine);
        if (!isOpen)
        {
            return "";
        }

        if (threads is < 1 or > MostThreads)
        {
            say($"'{machine}' would help, but on {threads} threads.");
            return $"'{machine}' would help on {threads} threads: from 1 to {MostThreads} are taken.";
        }

        if (Known() is not { } known || !known.Answer.AsSpan().SequenceEqual(answer))
        {
            say($"'{machine}' would help, but works out other bits.");
            return $"'{machine}' works out other bits than '{asked.Machine}', the machine of the study: its processor rounds otherwise. "
                + "It cannot help.";
        }

        machines.TryGetValue(silo, out var before);
        if (before is { IsDoubted: true })
        {
            return $"'{machine}' answered otherwise than '{asked.Machine}', the machine of the study. It cannot help.";
        }

        var own = new HelpingMachine(machine, SiloAddress.FromParsableString(silo), host!.Services.GetRequiredService<IGrainFactory>());
        // Where it asks again its places of before are no more.
        before?.GiveUp();
        machines[silo] = own;
        all.Enqueue(own);
        for (var k = 0; k < PerThread * threads; k++)
        {
            places.Add((own, k));
        }

        say($"'{machine}' helps, on {threads} {(threads == 1 ? "thread" : "threads")}.");
        return "";
    }

    /// <summary>How the study stands with a machine.</summary>
    internal StudyState State(string silo) => !isOpen ? Gone(silo)
        : machines.TryGetValue(silo, out var machine) && !machine.IsGone ? StudyState.AtWork
        : StudyState.GivenUp;

    /// <summary>A machine leaves.</summary>
    internal void Leave(string silo)
    {
        if (machines.TryGetValue(silo, out var machine) && machine.GiveUp())
        {
            say($"'{machine.Name}' has left.");
        }
    }

    // The cluster is that of this study alone: in a database of others nothing stays of it.
    private Task Forgotten(IHost own) => asked.Membership.IsOwn
        ? Task.CompletedTask
        : own.Services.GetRequiredService<IMembershipTable>().DeleteMembershipTableEntriesAsync(cluster, CancellationToken.None);

    private bool Untold() => statuses is { } known && known.GetApproximateSiloStatuses(onlyActive: false).Any(one =>
        one.Value is SiloStatus.Created or SiloStatus.Joining or SiloStatus.Active && !one.Key.Equals(known.SiloAddress)
        && !told.ContainsKey(one.Key.ToParsableString()));

    private StudyState Gone(string silo)
    {
        told[silo] = true;
        if (machines.TryGetValue(silo, out var machine))
        {
            machine.GiveUp();
        }

        return StudyState.Over;
    }

    private (byte[] Piece, byte[] Answer)? Known()
    {
        lock (turn)
        {
            return first.Count < First ? null : first.MaxBy(one => one.Piece.Length);
        }
    }

    private byte[] Do(byte[] piece, CancellationToken cancellation)
    {
        while (true)
        {
            var (machine, place) = places.Take(cancellation);
            if (machine is null)
            {
                try
                {
                    return Here(piece);
                }
                finally
                {
                    places.Add((null, place), CancellationToken.None);
                }
            }

            if (machine.IsGone)
            {
                continue;
            }

            byte[] answer;
            int number;
            try
            {
                (answer, number) = machine.Do(place, piece);
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                // Whatever it was, the piece is done by another; if it is the piece itself, here it says so.
                Failed(machine, place);
                continue;
            }

            places.Add((machine, place), CancellationToken.None);
            if (number % Checked == 1 && !Here(piece).AsSpan().SequenceEqual(answer))
            {
                throw Otherwise(machine);
            }

            return answer;
        }
    }

    private RunFailedException Otherwise(HelpingMachine machine)
    {
        byte[][] doubtful = [.. all.Where(one => one.Silo.Equals(machine.Silo)).SelectMany(one => one.Doubt())];
        var differs = $"'{machine.Name}' and '{asked.Machine}', the machine of the study, worked out a piece of it differently";
        try
        {
            asked.Withdraw(doubtful);
        }
        catch (IOException failure)
        {
            return new RunFailedException(
                $"{differs}, and what '{machine.Name}' did could not be taken out of what is kept: {failure.Message}",
                "Delete what is kept of this study, and begin again without that machine.");
        }

        return new RunFailedException(
            $"{differs}.",
            $"Begin again without '{machine.Name}': {(doubtful.Length == 1 ? "the piece" : $"none of the {doubtful.Length} pieces")} that it did "
            + $"in this run {(doubtful.Length == 1 ? "is not" : "is")} kept.");
    }

    private byte[] Here(byte[] piece)
    {
        var answer = work.Do(piece).GetAwaiter().GetResult();
        lock (turn)
        {
            if (first.Count < First)
            {
                first.Add((piece, answer));
            }
        }

        return answer;
    }

    private void Failed(HelpingMachine machine, int place)
    {
        var status = statuses?.GetApproximateSiloStatus(machine.Silo);
        if (machine.Fail() >= MostFailures || alarm.IsRaised || status is SiloStatus.Dead or SiloStatus.ShuttingDown or SiloStatus.Stopping)
        {
            if (machine.GiveUp())
            {
                say($"'{machine.Name}' does not answer any more: its pieces are done by the others.");
            }

            return;
        }

        _ = Task.Delay(Rest).ContinueWith(_ => places.Add((machine, place)), TaskScheduler.Default);
    }

    private sealed class Shared(HelpedStudy study) : IPieceDoer
    {
        public byte[] Do(byte[] piece, CancellationToken cancellation) => study.Do(piece, cancellation);
    }
}
