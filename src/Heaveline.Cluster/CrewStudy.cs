using Heaveline.Passes;

namespace Heaveline.Cluster;

/// <summary>A study that the machines of a crew are told of for as long as it is open.</summary>
public sealed class CrewStudy : IAsyncDisposable
{
    private readonly INoticeBoard board;
    private readonly CrewNotice notice;
    private readonly Action<string> say;
    private readonly CancellationTokenSource stop = new();
    private Task renewing = Task.CompletedTask;
    private int isDisposed;

    private CrewStudy(INoticeBoard board, CrewNotice notice, Action<string> say) => (this.board, this.notice, this.say) = (board, notice, say);

    /// <summary>A study's own mark, and the code that comes of it and of the crew's.</summary>
    /// <param name="crew">The crew.</param>
    public static (string Mark, string Code) Fresh(Crew crew)
    {
        ArgumentNullException.ThrowIfNull(crew);
        var mark = Guid.NewGuid().ToString("N");
        return (mark, crew.CodeOf(mark));
    }

    /// <summary>Tells the crew of a study.</summary>
    /// <param name="crew">The crew.</param>
    /// <param name="mark">The mark of the study.</param>
    /// <param name="study">The study, open with the code of its mark.</param>
    /// <param name="machine">What this machine is called.</param>
    /// <param name="program">Which Heaveline it has.</param>
    /// <param name="say">Told who stands by, and how it goes, a sentence.</param>
    /// <exception cref="RunFailedException">The database of the crew does not answer.</exception>
    public static async Task<CrewStudy> Open(
        Crew crew, string mark, HelpedStudy study, string machine, string program, Action<string> say)
    {
        ArgumentNullException.ThrowIfNull(crew);
        ArgumentNullException.ThrowIfNull(study);
        var own = new CrewStudy(
            NoticeBoard.Of(crew), new CrewNotice(mark, machine, program, 0, study.At.Address.ToString(), study.At.Port), say);
        var isOpen = false;
        try
        {
            await own.Put().ConfigureAwait(false);
            var waiting = (await own.board.All().ConfigureAwait(false)).Select(CrewNotice.Of).OfType<CrewNotice>()
                .Where(one => one.Study.Length == 0).OrderBy(one => one.Machine, StringComparer.Ordinal).ToList();
            say(Waiting(crew.Name, program, waiting));
            own.renewing = Task.Run(own.Renew);
            isOpen = true;
            return own;
        }
        catch (Exception silence) when (NoticeBoard.IsSilence(silence))
        {
            throw new RunFailedException(
                $"The database of the crew '{crew.Name}' cannot be asked: {NoticeBoard.Words(crew, silence)}.",
                "Look at what its file says under noted-in, and whether the database runs; or leave --crew out.");
        }
        finally
        {
            if (!isOpen)
            {
                await own.board.DisposeAsync().ConfigureAwait(false);
                own.stop.Dispose();
            }
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref isDisposed, 1) != 0)
        {
            return;
        }

        await stop.CancelAsync().ConfigureAwait(false);
        await renewing.ConfigureAwait(false);
        try
        {
            await board.Take(notice.Study).WaitAsync(NoticeBoard.Again).ConfigureAwait(false);
        }
        catch (Exception silence) when (NoticeBoard.IsSilence(silence))
        {
            // It goes by itself.
        }

        await board.DisposeAsync().ConfigureAwait(false);
        stop.Dispose();
    }

    private static string Waiting(string crew, string program, List<CrewNotice> waiting)
    {
        var others = waiting.Where(one => one.Program != program).ToList();
        var ready = waiting.Except(others).ToList();
        return (ready.Count == 0
                ? $"of the crew '{crew}' nobody stands by with this Heaveline; whoever comes is let help."
                : $"of the crew '{crew}' {Names(ready)} {(ready.Count == 1 ? "stands" : "stand")} by.")
            + (others.Count == 0
                ? ""
                : $" {Names(others)} {(others.Count == 1 ? "has" : "have")} another Heaveline than this, {program}, and cannot help.");
    }

    private static string Names(List<CrewNotice> machines) => string.Join(", ", machines.Select(one => $"'{one.Machine}'"));

    private Task Put() => board.Put(notice.Study, notice.Words, NoticeBoard.Stays);

    private async Task Renew()
    {
        var isSaid = false;
        while (true)
        {
            try
            {
                await Task.Delay(NoticeBoard.Again, stop.Token).ConfigureAwait(false);
                await Put().ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (Exception silence) when (NoticeBoard.IsSilence(silence))
            {
                if (!isSaid)
                {
                    say("the database of the crew cannot be asked: who helps goes on, but nobody new hears of this study until it can.");
                    isSaid = true;
                }
            }
        }
    }
}
