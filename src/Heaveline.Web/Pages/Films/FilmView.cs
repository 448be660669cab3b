using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Films;

/// <summary>What the page shows of an answer.</summary>
/// <param name="Answer">The answer: of one car, or of all at a place.</param>
public sealed record FilmView(FilmAnswer Answer)
{
    private const int Capacity = 12;

    private readonly Lazy<Figure> figure = new(() => Answer.Figure(Answer.FigureIds[0]));

    /// <summary>Its figure.</summary>
    public Figure Figure => figure.Value;

    /// <summary>The study behind the page.</summary>
    internal static PageStudy<FilmAsked, FilmAnswer, FilmView> StudyIn(StudyQueue queue) =>
        new(FilmStudy.Run, answer => new FilmView(answer), queue, Capacity);
}
