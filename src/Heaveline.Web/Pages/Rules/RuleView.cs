using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Rules;

/// <summary>What the page shows of an answer.</summary>
/// <param name="Answer">The answer.</param>
public sealed record RuleView(RuleAnswer Answer)
{
    // A fine map holds some 50 kB.
    private const int Capacity = 40;

    /// <summary>The figure, made once: a chart is drawn anew for each new figure.</summary>
    public Figure Figure { get; } = Answer.Figure(RuleAnswer.WithEveryLoad);

    /// <summary>Only the chosen load's line.</summary>
    public Figure OneLoad { get; } = Answer.Figure(RuleAnswer.WithOneLoad);

    /// <summary>The sentences.</summary>
    public IReadOnlyList<string> Sentences { get; } = [.. Answer.SentencesForReaders.Select(s => s.Text)];

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<RuleAsked, RuleAnswer, RuleView> StudyIn(StudyQueue queue) =>
        new(RuleStudy.Run, answer => new RuleView(answer), queue, Capacity);
}
