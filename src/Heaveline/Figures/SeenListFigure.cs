using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Cars seen at one bump, in order, with the intervals of what their films tell: an article's figure.</summary>
public static class SeenListFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="place">Where.</param>
    /// <param name="caption">What was found.</param>
    /// <param name="list">The cars.</param>
    public static Figure Of(string place, string caption, SeenList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        CategoryPanel Panel(
            string id, string label, string unit, Func<SeenCar, FilmNumber?> of, Func<double, double> shown, CategoryStyle style) => new()
            {
                Id = id,
                Value = new Axis { Label = label, Unit = unit },
                Style = style,
                Categories =
            [
                .. list.Cars.Where(c => of(c) is { } n && double.IsFinite(n.Value)).Select(c => (Car: c, N: of(c)!.Value)).Select(x => new Category
                {
                    Name = $"{x.Car.Name}, {Numeral.Of(In.KilometresPerHour.Of(x.Car.Speed), 0)} km/h",
                    Values = [new CategoryValue { Value = shown(x.N.Value), Low = shown(x.N.Low), High = shown(x.N.High) }],
                }),
            ],
            };
        FilmNumber? Estimate(SeenCar c, CarNumber number) => c.Car.Of(number) is { IsSaid: true } e ? new FilmNumber(e.Value, e.Low, e.High) : null;
        var panels = new List<CategoryPanel>();
        void Add(string id, string label, string unit, Func<SeenCar, FilmNumber?> of, Func<double, double> shown, CategoryStyle style)
        {
            if (list.Cars.Any(c => of(c) is { } n && double.IsFinite(n.Value)))
            {
                panels.Add(Panel(id, label, unit, of, shown, style));
            }
        }

        Add("pitch-per-lift", "RMS pitch, first second, for 100 mm of lift", In.Degrees.Symbol, c => c.PitchPerLift,
            In.DegreesFor100Millimetres.Of, CategoryStyle.Bars);
        Add("level-share", "level share of that second's motion", In.Percent.Symbol, c => c.HeaveShare, In.Percent.Of, CategoryStyle.Dots);
        Add("ratio", "rear over front frequency", "", c => Estimate(c, CarNumber.FrequencyRatio), v => v, CategoryStyle.Dots);
        return panels.Count == 0
            ? SentenceFigure.Of($"Seen at {place}", [caption])
            : new Figure
            {
                Title = $"Seen at {place}",
                AltText = $"{list.Cars.Length} cars in order of their pitch after the bump, with intervals; beside it how much of it is level "
                    + "and the ratio of their frequencies where films tell it.",
                Caption = caption,
                SignNote = "Bars: nine cases of ten. Cars whose bars meet are not told apart.",
                Size = FigureSize.Page,
                Panels = [.. panels],
            };
    }
}
