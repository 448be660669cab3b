using Heaveline.Answers;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Studying;

/// <summary>A study behind a page: answered for all readers in their turn, and the latest answers kept as they are shown.</summary>
/// <param name="study">The study.</param>
/// <param name="show">From an answer to what a page shows of it.</param>
/// <param name="queue">Where it waits for its turn.</param>
/// <param name="most">How many answers are kept.</param>
internal sealed class PageStudy<TAsked, TAnswer, TView>(Func<TAsked, StudyRun, TAnswer> study, Func<TAnswer, TView> show, StudyQueue queue, int most)
    : IDisposable
    where TAsked : class
    where TAnswer : Answer
    where TView : class
{
    private readonly AnswerCache<TView> answers = new(most);

    /// <summary>The finished answer, if it is still kept.</summary>
    public TView? Find(string key) => answers.Find(key);

    /// <summary>Answers a question.</summary>
    /// <param name="reading">A question without objections.</param>
    /// <param name="meanwhile">Told every answer that comes before the last; null for none.</param>
    /// <param name="progress">Told the share done; null for none.</param>
    /// <param name="cancellation">Stops the work; what was told stands.</param>
    /// <exception cref="RefusedValueException">A car cannot be asked so.</exception>
    /// <exception cref="RunFailedException">It could not be computed.</exception>
    /// <exception cref="QueueFullException">Too many wait already.</exception>
    public Task<TView> Answer(
        AskedReading<TAsked> reading, Action<TView>? meanwhile, IProgress<double>? progress, CancellationToken cancellation) => queue.Run(
        () =>
        {
            if (Find(reading.Key) is { } known)
            {
                return known;
            }

            var answer = study(reading.Asked!, new StudyRun
            {
                Progress = progress,
                Cancellation = cancellation,
                Degree = Environment.ProcessorCount,
                Meanwhile = meanwhile is null ? null : earlier => meanwhile(show((TAnswer)earlier)),
            });
            var view = show(answer);
            // What was stopped tells the best so far: whoever asks again asks for the whole.
            if (!cancellation.IsCancellationRequested)
            {
                answers.Keep(reading.Key, view);
            }

            return view;
        },
        cancellation);

    public void Dispose() => answers.Dispose();
}
