using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>What the page shows of a choice of parts.</summary>
/// <param name="Answer">The answer.</param>
public sealed record ChooseView(ChooseAnswer Answer)
{
    // An answer holds every setup that was driven.
    private const int Capacity = 6;

    private readonly Lazy<Figure> tradeOff = new(() => Answer.Figure(ChooseAnswer.TradeOff));

    /// <summary>Price against settling.</summary>
    public Figure TradeOff => tradeOff.Value;

    /// <summary>Whether any setup but the car as it is may be chosen: else there is nothing to draw.</summary>
    internal bool IsAnyAllowed => Answer.Findings.Found.Driven.Any(one => one.IsAllowed && one.Setup != 0L);

    /// <summary>What stands upwards in it, in words.</summary>
    public string Upwards => TradeOff.Panels.OfType<ChartPanel>().First().Y.Label;

    /// <summary>The shortlist with its cars.</summary>
    internal IReadOnlyList<ChooseTold> List => Answer.Findings.List;

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<ChooseAsked, ChooseAnswer, ChooseView> StudyIn(StudyQueue queue) =>
        new(ChooseStudy.Run, answer => new ChooseView(answer), queue, Capacity);
}
