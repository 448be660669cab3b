using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Links;

/// <summary>What the page shows of an answer.</summary>
/// <param name="Answer">The answer.</param>
public sealed record LinkView(LinkAnswer Answer)
{
    // An answer holds ten passes, recorded: half a megabyte each.
    private const int Capacity = 12;

    private readonly Lazy<Figure> bars = new(() => Answer.Figure(LinkAnswer.Bars));
    private readonly Lazy<Figure> traces = new(() => Answer.Figure(LinkAnswer.Traces));

    /// <summary>The bench with the link and without.</summary>
    public Figure Bars => bars.Value;

    /// <summary>The passes over time, at the speed in hand.</summary>
    public Figure Traces => traces.Value;

    /// <summary>The question: a bare number in a box is in the unit beside it.</summary>
    /// <param name="given">What is chosen.</param>
    /// <param name="finder">Finds cars and roads.</param>
    internal static AskedReading<LinkAsked> Read(Given given, IFinder finder) => LinkStudy.OnPage.Read(
        given.With(LinkStudy.Spring, words => QuantityText.Whole(words, In.NewtonsPerMillimetre.Symbol))
            .With(LinkStudy.Damper, words => QuantityText.Whole(words, In.NewtonSecondsPerMetre.Symbol)),
        finder);

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<LinkAsked, LinkAnswer, LinkView> StudyIn(StudyQueue queue) =>
        new(LinkStudy.Run, answer => new LinkView(answer), queue, Capacity);
}
