using Heaveline.Causes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Why a car pitches: each cause with its share of the settling and of the hit.</summary>
public static class WhyFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="why">The ranked causes.</param>
    public static Figure Of(Why why)
    {
        ArgumentNullException.ThrowIfNull(why);
        return new Figure
        {
            Title = FormattableString.Invariant($"{why.Model.Car.Name} at {In.KilometresPerHour.Of(why.Speed):0.#} km/h: why it pitches"),
            AltText = "Bars of the causes' shares of the pitch of the settling and of the hit; bars to the right make it worse, to the left better.",
            Caption = $"{FirstLetter.Raised(why.Model.Load.Name)}, over {why.Road.CaptionFor(why.Model.Rolls)}. "
                + $"{(why.Settling.Causes.Count > 0 ? why.Settling.Causes[0].Sentence : "")}",
            SignNote = "Each cause is taken to a neutral value; its share is its mean effect over all orders of taking them together. Right of zero: "
                + "it makes more of the measure.",
            Size = FigureSize.Page,
            Panels = [PanelOf(why.Settling), PanelOf(why.Hit)],
        };
    }

    private static CategoryPanel PanelOf(WhyRanking ranking) => new()
    {
        Title = FirstLetter.Raised(ranking.Measure.Name),
        Value = new Axis { Label = "share of the measure", Unit = ranking.Measure.Unit.Symbol },
        Categories =
        [
            .. ranking.Causes.Where(c => double.IsFinite(c.Share)).Where((c, k) => k == 0 || Math.Abs(c.Relative) >= 0.005)
                .Select(c => Row(FirstLetter.Raised(c.Is), ranking.Measure.Unit.Of(c.Share), c.Relative > 0.0 ? Ink.Second : Ink.First))
                .DefaultIfEmpty(Row("No share can be told", 0.0, Ink.First)),
        ],
    };

    private static Category Row(string name, double share, Ink ink) =>
        new() { Name = name, Values = [new CategoryValue { Value = share, Ink = ink }] };
}
