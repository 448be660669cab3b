using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Films;

/// <summary>What the page shows of a headlamp's rhythm.</summary>
/// <param name="Answer">The answer.</param>
public sealed record FlashView(FlashAnswer Answer)
{
    private const int Capacity = 4;

    private readonly Lazy<Figure> figure = new(() => Answer.Figure(FlashAnswer.Drawing));

    /// <summary>Its figure.</summary>
    public Figure Figure => figure.Value;

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<FlashAsked, FlashAnswer, FlashView> StudyIn(StudyQueue queue) =>
        new(FlashStudy.Run, answer => new FlashView(answer), queue, Capacity);
}
