using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Press.Plates;

/// <summary>A whole figure on the sheet: title, panels, caption, sign note, from top to bottom.</summary>
internal sealed class FigureSetting
{
    private const double Margin = 4.0, BetweenPanels = 7.0, UnderTitle = 4.0, OverCaption = 7.0, OverNote = 3.0;

    private readonly PanelSetting[] panels;
    private readonly Gutters gutters;
    private readonly string[] title, caption, note;

    /// <summary>Measures a figure.</summary>
    /// <exception cref="Quantities.RefusedValueException">
    /// A chart panel has no x axis, or a logarithmic axis meets a range that is not above zero.
    /// </exception>
    public FigureSetting(Figure figure)
    {
        WidthMillimetres = figure.Size == FigureSize.Page ? 174.0 : 84.0;
        title = Wrapped.Of(figure.Title, Lettering.Title, InnerWidth);
        caption = Wrapped.Of(figure.Caption, Lettering.Caption, InnerWidth);
        note = Wrapped.Of(figure.SignNote, Lettering.SignNote, InnerWidth);
        panels = [.. figure.Panels.Select((panel, i) => SettingOf(figure, panel, i))];
        gutters = panels.Aggregate(default(Gutters), (all, panel) => all.And(panel.Gutters));

        // The last number of the x axis stands half outside the plot.
        gutters = gutters with { Right = Math.Max(gutters.Right, 8.0) };
        HeightMillimetres = Math.Ceiling(ContentHeight / 72.0 * 25.4);
    }

    /// <summary>Width on paper, mm.</summary>
    public double WidthMillimetres { get; }

    /// <summary>Height on paper, whole mm.</summary>
    public double HeightMillimetres { get; }

    /// <summary>Width on paper, points.</summary>
    public double Width => WidthMillimetres / 25.4 * 72.0;

    /// <summary>Height on paper, points.</summary>
    public double Height => HeightMillimetres / 25.4 * 72.0;

    private double InnerWidth => Width - 2.0 * Margin;

    private double ContentHeight =>
        2.0 * Margin + title.Length * Lettering.Title.LineHeight + UnderTitle
        + panels.Sum(panel => panel.HeightOf(InnerWidth, gutters)) + BetweenPanels * (panels.Length - 1)
        + (caption.Length == 0 ? 0.0 : OverCaption + caption.Length * Lettering.Caption.LineHeight)
        + (note.Length == 0 ? 0.0 : OverNote + note.Length * Lettering.SignNote.LineHeight);

    /// <summary>Draws the figure.</summary>
    public void Draw(ISheet sheet)
    {
        sheet.Area(new Box(0.0, 0.0, Width, Height), Colour.White);
        var y = Lines(sheet, title, Margin, Lettering.Title) + UnderTitle;
        for (var i = 0; i < panels.Length; i++)
        {
            var height = panels[i].HeightOf(InnerWidth, gutters);
            panels[i].Draw(sheet, new Box(Margin, y, Width - Margin, y + height), gutters);
            y += height + (i < panels.Length - 1 ? BetweenPanels : 0.0);
        }

        y = caption.Length == 0 ? y : Lines(sheet, caption, y + OverCaption, Lettering.Caption);
        if (note.Length > 0)
        {
            Lines(sheet, note, y + OverNote, Lettering.SignNote);
        }
    }

    private static double Lines(ISheet sheet, string[] lines, double top, Lettering lettering)
    {
        foreach (var line in lines)
        {
            sheet.TextCentredOn(line, Margin, top + lettering.LineHeight / 2.0, lettering);
            top += lettering.LineHeight;
        }

        return top;
    }

    private PanelSetting SettingOf(Figure figure, Panel panel, int index) => panel switch
    {
        ChartPanel chart => ChartOf(figure, chart, index),
        ScenePanel scene => new SceneSetting(scene),
        TablePanel table => new TableSetting(table),
        MapPanel map => figure.Size == FigureSize.Page ? new MapSetting(map, 80.0 / 25.4 * 72.0, 70.0) : new MapSetting(map, 55.0 / 25.4 * 72.0, 0.0),
        CategoryPanel category => new CategorySetting(category, 0.34 * InnerWidth),
        _ => throw new ArgumentException($"The press cannot draw {panel.GetType().Name}."),
    };

    private ChartSetting ChartOf(Figure figure, ChartPanel chart, int index)
    {
        var axis = figure.XAxisOf(chart);
        var sharing = figure.Panels.Select((panel, i) => (Panel: panel as ChartPanel, i)).Where(other => other.Panel is { X: null }).ToArray();
        var shared = chart.X is null;
        ChartPanel[] together = shared ? [.. sharing.Select(other => other.Panel!)] : [chart];
        var room = ChartContent.RoomFor(together);
        var place = new ChartPlace(
            (chart.Height ?? UsualHeight(figure)) / 25.4 * 72.0,
            figure.Size == FigureSize.Page ? 92.0 : 58.0,
            !shared || index == sharing[^1].i,
            shared ? figure.SharedBands : [],
            shared && index == sharing[0].i);
        return new ChartSetting(chart, axis, Span.Of(axis, together.SelectMany(ChartContent.Xs), rounded: room > 0.0, parts: 8, room), place);
    }

    // The more panels, the lower each, so that a figure of any usual number of panels fits a page beside its text.
    private static double UsualHeight(Figure figure)
    {
        var count = figure.Panels.Count(panel => panel is ChartPanel);
        return figure.Size == FigureSize.Page
            ? count switch { 1 => 75.0, 2 => 50.0, 3 => 38.0, _ => 31.0 }
            : count switch { 1 => 50.0, 2 => 36.0, 3 => 28.0, _ => 24.0 };
    }
}
