using Heaveline.Figures;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>One panel on the sheet: first it says what room it needs beside its plot, then how high it is, then it draws itself.</summary>
internal abstract class PanelSetting(Panel panel)
{
    private readonly string title = panel.Title;

    /// <summary>Room needed beside the plot.</summary>
    public virtual Gutters Gutters => default;

    /// <summary>Height of the whole panel, points.</summary>
    /// <param name="width">Width of the sheet inside its margins.</param>
    /// <param name="gutters">Room beside all plots of the figure.</param>
    public double HeightOf(double width, Gutters gutters) => TitleHeight(width) + BodyHeight(width, gutters);

    /// <summary>Draws the panel into a box of the height it asked for.</summary>
    public void Draw(ISheet sheet, Box box, Gutters gutters)
    {
        var top = box.Top;
        foreach (var line in Wrapped.Of(title, Lettering.PanelTitle, box.Width))
        {
            sheet.TextCentredOn(line, box.Left, top + Lettering.PanelTitle.LineHeight / 2.0, Lettering.PanelTitle);
            top += Lettering.PanelTitle.LineHeight;
        }

        DrawBody(sheet, box with { Top = box.Top + TitleHeight(box.Width) }, gutters);
    }

    /// <summary>Height below the title, points.</summary>
    protected abstract double BodyHeight(double width, Gutters gutters);

    /// <summary>Draws what stands below the title.</summary>
    protected abstract void DrawBody(ISheet sheet, Box box, Gutters gutters);

    private double TitleHeight(double width) =>
        title.Length == 0 ? 0.0 : Wrapped.Of(title, Lettering.PanelTitle, width).Length * Lettering.PanelTitle.LineHeight + 1.0;
}
