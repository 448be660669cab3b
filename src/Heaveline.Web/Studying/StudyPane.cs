using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Web.Studying;

/// <summary>
/// What one reader sees of a study: the answer to what is asked now, or the one before while that is computed, or why there is none.
/// </summary>
/// <param name="study">The study.</param>
/// <param name="onPage">Does something on the page's own thread and shows the page anew.</param>
/// <param name="onFault">Told a fault of the program.</param>
internal sealed class StudyPane<TAsked, TAnswer, TView>(
    PageStudy<TAsked, TAnswer, TView> study, Func<Action, Task> onPage, Func<Exception, Task> onFault) : IDisposable
    where TAsked : class
    where TAnswer : Answer
    where TView : class
{
    private AskedReading<TAsked>? asked;
    private string? shown;

    /// <summary>The work under way.</summary>
    public Computation Computation { get; } = new(TimeProvider.System);

    /// <summary>What is shown; null for nothing.</summary>
    public TView? View { get; private set; }

    /// <summary>Why what is asked could not be computed; null where it could, or is not yet.</summary>
    public string? Failure { get; private set; }

    /// <summary>Whether what is shown answers what is asked, be it by a coarse answer.</summary>
    public bool IsCurrent => View is not null && shown == asked?.Key;

    /// <summary>Whether what is shown answers another question.</summary>
    public bool IsStale => View is not null && shown != asked?.Key;

    /// <summary>Asks.</summary>
    /// <param name="reading">What is asked; where there are objections nothing is shown.</param>
    /// <param name="begins">Whether the work may begin now.</param>
    public void Ask(AskedReading<TAsked> reading, bool begins)
    {
        if (reading.Key == asked?.Key && Failure is null && reading.Asked is not null && asked.Asked is not null)
        {
            return;
        }

        (asked, Failure) = (reading, null);
        if (reading.Asked is null)
        {
            Computation.Cancel();
            View = null;
        }
        else if (study.Find(reading.Key) is { } known)
        {
            Computation.Cancel();
            (View, shown) = (known, reading.Key);
        }
        else if (begins)
        {
            Start();
        }
    }

    /// <summary>Begins the work, or begins it again.</summary>
    public void Start() => _ = Compute(asked!);

    public void Dispose() => Computation.Dispose();

    private async Task Compute(AskedReading<TAsked> mine)
    {
        Task Show(TView? view, string? failure) => onPage(() =>
        {
            if (asked?.Key == mine.Key)
            {
                (View, shown, Failure) = (view, mine.Key, failure);
            }
        });
        try
        {
            await Computation.Run(async (progress, stop) =>
                await Show(await study.Answer(mine, earlier => _ = Show(earlier, null), progress, stop), null));
        }
        catch (NoAnswerException e)
        {
            await Show(null, e.Message);
        }
        catch (Exception e)
        {
            await onFault(e);
        }

        await onPage(() => { });
    }
}
