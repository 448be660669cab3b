using System.Text;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Type;
using Heaveline.Reports;
using SkiaSharp;

namespace Heaveline.Press.Sheets;

/// <summary>Pages filled from top to bottom: what does not fit any more goes to the next page.</summary>
internal sealed class PageFlow(SKDocument document, PaperSize paper, Report report, PageNumbers numbers)
{
    // The width of a page's figure; the rest is margin.
    private const double WidthMillimetres = 174.0;
    private const double TopMillimetres = 18.0, BottomMillimetres = 20.0, FootMillimetres = 11.0;

    private static readonly Lettering Foot = new(Face.Regular, 8.0, Palette.QuietText);

    private readonly List<int> starts = [];
    private readonly Queue<(double Height, Action Draw)> waiting = [];
    private SKCanvas? canvas;
    private int page;

    /// <summary>Width between the margins, points.</summary>
    public static double Width => Points(WidthMillimetres);

    /// <summary>Height between the margins of a page, points.</summary>
    public double Height => PageHeight - Points(TopMillimetres + BottomMillimetres);

    /// <summary>Height still free on this page, points.</summary>
    public double Left => canvas is null ? 0.0 : PageHeight - Points(BottomMillimetres) - Y;

    /// <summary>Left margin, points.</summary>
    public double X => (PageWidth - Width) / 2.0;

    /// <summary>Where the next thing stands, points from the top.</summary>
    public double Y { get; private set; }

    /// <summary>Whether nothing stands on this page yet.</summary>
    public bool AtTop => canvas is not null && Y <= Points(TopMillimetres) + 0.01;

    public ISheet Sheet => new SkiaSheet(Canvas);

    private SKCanvas Canvas => canvas ?? throw new InvalidOperationException("No page has been begun.");

    private double PageWidth => paper == PaperSize.A4 ? Points(210.0) : 612.0;

    private double PageHeight => paper == PaperSize.A4 ? Points(297.0) : 792.0;

    /// <summary>Begins a page unless so much height is free.</summary>
    public void Need(double height)
    {
        while (canvas is null || (Left < height && !AtTop))
        {
            Next();
        }
    }

    /// <summary>
    /// Draws something high here if it fits, else at the top of the next page: what follows it fills this one
    /// meanwhile, so that no page is left half empty.
    /// </summary>
    public void Float(double height, Action draw)
    {
        if (waiting.Count == 0 && (canvas is null || AtTop || Left >= height))
        {
            Need(height);
            draw();
            return;
        }

        waiting.Enqueue((height, draw));
    }

    /// <summary>Draws everything that still waits.</summary>
    public void Settle()
    {
        while (waiting.Count > 0)
        {
            Next();
        }
    }

    /// <summary>Goes down; at the top of a page air is not needed.</summary>
    public void Skip(double height) => Y += AtTop ? 0.0 : height;

    /// <summary>Goes down whatever stands above.</summary>
    public void Take(double height) => Y += height;

    /// <summary>Draws with the origin at the left margin and the height reached, shrunk by a factor.</summary>
    public void Draw(double scale, Action<ISheet> what)
    {
        Canvas.Save();
        Canvas.Translate((float)X, (float)Y);
        Canvas.Scale((float)scale);
        what(new SkiaSheet(Canvas));
        Canvas.Restore();
    }

    /// <summary>One line of text at an indent.</summary>
    public void Line(string text, Lettering lettering, double indent = 0.0)
    {
        Need(lettering.LineHeight);
        Sheet.TextCentredOn(Glyphs.Shown(text, lettering.Face), X + indent, Y + lettering.LineHeight / 2.0, lettering);
        Take(lettering.LineHeight);
    }

    /// <summary>Marks the start of a part, where links lead.</summary>
    public void Start()
    {
        using var name = Name(starts.Count);
        Canvas.DrawNamedDestinationAnnotation(new SKPoint((float)X, (float)Y), name);
        starts.Add(page);
    }

    /// <summary>Makes the line of this height, just above, a link to a part.</summary>
    public void Link(int part, double height)
    {
        using var name = Name(part);
        Canvas.DrawLinkDestinationAnnotation(new SKRect((float)X, (float)(Y - height), (float)(X + Width), (float)Y), name);
    }

    /// <summary>Ends the last page and says where everything stands.</summary>
    public PageNumbers End()
    {
        Close();
        return new PageNumbers(starts, page);
    }

    private void Next()
    {
        Close();
        canvas = document.BeginPage((float)PageWidth, (float)PageHeight);
        page++;
        Y = Points(TopMillimetres);
        while (waiting.TryPeek(out var first) && (AtTop || Left >= first.Height))
        {
            waiting.Dequeue().Draw();
        }
    }

    private void Close()
    {
        if (canvas is null)
        {
            return;
        }

        var at = PageHeight - Points(FootMillimetres);
        Sheet.TextCentredOn(Glyphs.Fitted(report.Title, Foot, 0.8 * Width), X, at, Foot);
        Sheet.TextCentredOn(FormattableString.Invariant($"{page} / {numbers.Pages}"), X + Width, at, Foot, TextAlign.End);
        document.EndPage();
        canvas = null;
    }

    private static SKData Name(int part) => SKData.CreateCopy(Encoding.ASCII.GetBytes(FormattableString.Invariant($"part-{part + 1}\0")));

    private static double Points(double millimetres) => millimetres / 25.4 * 72.0;
}
