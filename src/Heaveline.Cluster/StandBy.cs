using Heaveline.Passes;

namespace Heaveline.Cluster;

/// <summary>
/// A machine that stands by for a crew: it looks which studies are open, and helps with each, with several at once, until somebody stops it. Each has
/// threads of its own here, below normal priority, so that the system shares the processors out among them.
/// </summary>
public sealed class StandBy
{
    // A study more waits until one has ended.
    private const int MostStudies = 8;

    // So often it asks a study that is noted but does not let it in.
    private const int MostTries = 3;

    private static readonly TimeSpan Look = TimeSpan.FromSeconds(2.0);

    private readonly StandByAsked asked;
    private readonly Action<string> say;
    private readonly INoticeBoard board;
    private readonly string own = Guid.NewGuid().ToString("N");
    private readonly Dictionary<string, Task<bool>> atWork = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> tries = new(StringComparer.Ordinal);
    private long renewed = long.MinValue / 2;

    private StandBy(StandByAsked asked, Action<string> say) => (this.asked, this.say, board) = (asked, say, NoticeBoard.Of(asked.Crew));

    /// <summary>Stands by.</summary>
    /// <param name="asked">For whom.</param>
    /// <param name="say">Told how it goes, a sentence.</param>
    /// <param name="stop">Stops it: it leaves every study that it helps with.</param>
    public static async Task For(StandByAsked asked, Action<string> say, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var machine = new StandBy(asked, say);
        using var left = CancellationTokenSource.CreateLinkedTokenSource(stop);
        try
        {
            await machine.Run(left.Token).ConfigureAwait(false);
        }
        finally
        {
            // Also where a failure ends it: no study is helped by a machine that stands by no more.
            await left.CancelAsync().ConfigureAwait(false);
            await machine.Leave().ConfigureAwait(false);
        }
    }

    private async Task Run(CancellationToken stop)
    {
        say($"Standing by for the crew '{asked.Crew.Name}', as '{asked.Machine}', on {Threads}. Ctrl+C leaves.");
        for (var isSilent = false; !stop.IsCancellationRequested;)
        {
            try
            {
                await Round(stop).ConfigureAwait(false);
                if (isSilent)
                {
                    say("The database can be asked again.");
                }

                isSilent = false;
            }
            catch (Exception silence) when (NoticeBoard.IsSilence(silence))
            {
                if (!isSilent)
                {
                    say($"The database cannot be asked: {NoticeBoard.Words(asked.Crew, silence)}. It is tried again until it can.");
                }

                isSilent = true;
            }

            await Task.Delay(Look, stop).ContinueWith(_ => { }, TaskScheduler.Default).ConfigureAwait(false);
        }
    }

    private async Task Round(CancellationToken stop)
    {
        if (Environment.TickCount64 - renewed >= NoticeBoard.Again.TotalMilliseconds)
        {
            await board.Put(own, new CrewNotice("", asked.Machine, asked.Program, asked.Threads, "", 0).Words, NoticeBoard.Stays)
                .ConfigureAwait(false);
            renewed = Environment.TickCount64;
        }

        var open = (await board.All().ConfigureAwait(false)).Select(CrewNotice.Of).OfType<CrewNotice>()
            .Where(one => one.Study.Length > 0).ToList();
        foreach (var (study, help) in atWork.Where(one => one.Value.IsCompleted).ToList())
        {
            atWork.Remove(study);
            // Whoever heard the end of it does not ask again; else the study, if it is still noted, is asked once more.
            tries[study] = await help.ConfigureAwait(false) ? MostTries : tries.GetValueOrDefault(study) + 1;
        }

        // What is noted no more is forgotten.
        foreach (var gone in tries.Keys.Where(study => open.All(one => one.Study != study)).ToList())
        {
            tries.Remove(gone);
        }

        foreach (var study in open.Where(one => !atWork.ContainsKey(one.Study) && tries.GetValueOrDefault(one.Study) < MostTries))
        {
            if (study.Machine == PlainWords.Name(asked.Machine))
            {
                say($"The study at '{study.Machine}' was begun at a machine of this name and is left to it; to help another that is called so, stand "
                    + "by under another --name.");
                tries[study.Study] = MostTries;
            }
            else if (study.Program != asked.Program)
            {
                say($"The study at '{study.Machine}' is worked out by Heaveline {study.Program}, this is {asked.Program}: it goes on without this "
                    + "machine.");
                tries[study.Study] = MostTries;
            }
            else if (atWork.Count < MostStudies)
            {
                atWork[study.Study] = Task.Run(() => Helps(study, stop), CancellationToken.None);
            }
        }
    }

    // Whether it is not to be asked again.
    private async Task<bool> Helps(CrewNotice study, CancellationToken stop)
    {
        void Said(string sentence) => say($"The study at '{study.Machine}': {sentence}");
        try
        {
            using var reader = asked.Reader();
            var end = await Help.Out(
                new HelpAsked
                {
                    Host = study.Host,
                    Port = study.Port,
                    Code = asked.Crew.CodeOf(study.Study),
                    Program = asked.Program,
                    Machine = asked.Machine,
                    Threads = asked.Threads,
                    MostMissed = asked.MostMissed,
                    Reads = reader.Read,
                },
                Said,
                stop).ConfigureAwait(false);
            if (end != HelpEnd.Stopped)
            {
                Said(end switch
                {
                    HelpEnd.Over => "it has ended.",
                    HelpEnd.Gone => "it has not answered for ten seconds.",
                    _ => "it had ended, or its machine gone, before this one had joined.",
                });
            }

            return end is HelpEnd.Over or HelpEnd.Stopped;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return true;
        }
        catch (RunFailedException refused)
        {
            Said(PlainWords.Sentence(refused.Message));
            return false;
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // A study that this machine cannot read or work out is none of the others' trouble: it goes on standing by.
            Said($"this machine cannot help: {PlainWords.Sentence(failure.Message)}");
            return true;
        }
    }

    private async Task Leave()
    {
        try
        {
            await Task.WhenAll(atWork.Values).ConfigureAwait(false);
        }
        finally
        {
            await TakeDown().ConfigureAwait(false);
            await board.DisposeAsync().ConfigureAwait(false);
        }
    }

    private async Task TakeDown()
    {
        try
        {
            await board.Take(own).WaitAsync(NoticeBoard.Again).ConfigureAwait(false);
        }
        catch (Exception silence) when (NoticeBoard.IsSilence(silence))
        {
            // The notice goes by itself.
        }
    }

    private string Threads => $"{asked.Threads} {(asked.Threads == 1 ? "thread" : "threads")}";
}
