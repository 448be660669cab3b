using System.Collections.Concurrent;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Rules;

/// <summary>What the page shows of an answer.</summary>
/// <param name="Answer">The answer.</param>
public sealed record RuleView(RuleAnswer Answer)
{
    // A fine map holds some 50 kB for each measure.
    private const int Capacity = 40;

    private readonly ConcurrentDictionary<string, RuleView> others = new(StringComparer.Ordinal);
    private readonly Lazy<Figure> figure = new(() => Answer.Figure(RuleAnswer.WithEveryLoad));
    private readonly Lazy<IReadOnlyList<string>> sentences = new(() => [.. Answer.SentencesForReaders.Select(s => s.Text)]);

    /// <summary>The figure as it is taken away.</summary>
    public Figure Figure => figure.Value;

    /// <summary>The sentences.</summary>
    public IReadOnlyList<string> Sentences => sentences.Value;

    /// <summary>The map beside this one, from the same passes: the hit beside what follows it, the settling beside the hit.</summary>
    public RuleView? Beside => By(Answer.Map.JudgesHit ? SettlingCatalogue.RmsPitch.Word! : HitCatalogue.PeakPitchAcceleration.Word!);

    /// <summary>The same passes by another measure, made once; null where the answer holds none by it.</summary>
    /// <param name="word">The measure's word.</param>
    public RuleView? By(string word) =>
        word == Answer.Asked.Measure.Word ? this
        : Answer.By(word) is { } other
            ? others.GetOrAdd(word, _ => new RuleView(other with { Others = [Answer with { Others = [] }, .. Answer.Others] }))
            : null;

    /// <summary>Why there is no map by a measure.</summary>
    /// <param name="measure">The measure.</param>
    public RunFailedException NoNumber(Measure<Pass> measure)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return new(
            $"By {measure.Name} no point of this map has a number.",
            measure.WhyNone(Answer.Asked.Car.Car) ?? "Every pass left the model's range: take a lower bump or lower speeds.");
    }

    /// <summary>The question of the passes alone: by which measure they are judged makes no other one.</summary>
    /// <param name="given">What is chosen.</param>
    /// <param name="finder">Finds cars and roads.</param>
    internal static AskedReading<RuleAsked> Read(Given given, IFinder finder) =>
        RuleStudy.OnPage.Read(given.With(RuleStudy.Measure, (string?)null), finder);

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<RuleAsked, RuleAnswer, RuleView> StudyIn(StudyQueue queue) =>
        new(RuleStudy.Run, answer => new RuleView(answer), queue, Capacity);
}
