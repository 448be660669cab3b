using Heaveline.Figures;

namespace Heaveline.Web.Pages.Describing;

/// <summary>The figure of a car at its load states, and the drawing alone that stands beside the form.</summary>
internal static class CarPicture
{
    /// <summary>The whole figure, with its table: what a reader takes away.</summary>
    public static Figure Of(CarNumbers numbers) => LoadStatesFigure.Of(numbers.Models);

    /// <summary>The side view of that figure.</summary>
    public static ScenePanel SceneOf(Figure figure) => figure.Panels.OfType<ScenePanel>().First();
}
