using System.Globalization;
using System.Text;
using Heaveline.Figures;
using Heaveline.Figures.Silhouettes;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// A silhouette's lines as the text that browsers draw paths from: centimetres, x forward from the rear axle, y down from the ground.
/// </summary>
internal static class PathText
{
    /// <summary>The text of a path.</summary>
    public static string Of(SilhouettePath path)
    {
        var text = new StringBuilder();
        foreach (var step in path.Steps)
        {
            if (text.Length == 0)
            {
                text.Append('M');
            }
            else if (step.Round is { } round)
            {
                text.Append('Q').Append(Place(round)).Append(' ');
            }
            else if (step.ArchRadius > 0.0)
            {
                // The long way round, over the wheel.
                text.Append('A').Append(Centimetres(step.ArchRadius)).Append(' ').Append(Centimetres(step.ArchRadius)).Append(" 0 1 0 ");
            }
            else
            {
                text.Append('L');
            }

            text.Append(Place(step.To));
        }

        return path.IsClosed ? text.Append('Z').ToString() : text.ToString();
    }

    private static string Place(ScenePoint place) => $"{Centimetres(place.X)} {Centimetres(-place.Z)}";

    private static string Centimetres(double metres) => Math.Round(100.0 * metres, 1).ToString(CultureInfo.InvariantCulture);
}
