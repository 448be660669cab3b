using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Rules;

/// <summary>What the page shows of an answer.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Answer">What came of it.</param>
/// <param name="IsFine">Whether this is the fine map.</param>
public sealed record RuleView(RuleQuestion Question, MapAnswer Answer, bool IsFine)
{
    /// <summary>What could not be marked, one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>The figure, made once: a chart is drawn anew for each new figure.</summary>
    public Figure Figure { get; } = Answer.Figure;

    /// <summary>Only the chosen load's line.</summary>
    public Figure OneLoad { get; } = (Answer with { Loads = [.. Answer.Loads.Where(l => l.Name == Question.Load.Name)] }).Figure;

    /// <summary>The sentences.</summary>
    public IReadOnlyList<string> Sentences { get; } = Answer.Sentences(withOptions: false);
}
