using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// Settling across, price or ride upwards: every setup that may be chosen, the shortlist by its letters, the car as it is as a cross.
/// </summary>
internal static class ChooseFigure
{
    // More points than this say nothing more on paper.
    private const int MostPoints = 1500;

    /// <summary>The figure.</summary>
    public static Figure Of(ChooseFindings findings, ChooseWords words)
    {
        var found = findings.Found;
        var up = findings.Parts.HasPrices ? WishKind.Money : found.Wishes.Contains(WishKind.Ride) ? WishKind.Ride : WishKind.Hit;
        var k = found.Wishes.IndexOf(up);
        double Height(DrivenSetup one) => up == WishKind.Money ? one.Wishes[k] : In.Percent.Of(one.Wishes[k]);
        DrivenSetup[] allowed = [.. found.Driven.Where(one => one.IsAllowed && one.Setup != 0L)];
        var step = Math.Max(1, (allowed.Length + MostPoints - 1) / MostPoints);
        ImmutableArray<Mark> cloud =
        [
            .. allowed.Where((_, n) => n % step == 0).Select(one => new Mark
            {
                X = In.Percent.Of(one.Wishes[0]), Y = Height(one), Symbol = MarkSymbol.Dot, Ink = Ink.Fifth,
            }),
        ];
        return new Figure
        {
            Title = $"{findings.Asked.Car.Name}: what to buy",
            AltText = FormattableString.Invariant($"{allowed.Length} setups by their settling and their {ChooseTables.Name(up)}; ")
                + (findings.List.IsEmpty ? "none is worth buying." : $"{findings.List.Length} of them lettered."),
            Caption = $"{words.Finding.Text} {words.Asked.Text}",
            SignNote = "Cross: the car as it is. Letters: the shortlist. Grey: other setups that may be chosen"
                + (step > 1 ? FormattableString.Invariant($", one of {step} drawn") : "")
                + ". Both ways less is better; settling in the car as stated.",
            Size = FigureSize.Page,
            Panels =
            [
                new ChartPanel
                {
                    X = new Axis { Label = "settling, of the car as it is", Unit = "%" },
                    Y = up == WishKind.Money
                        ? new Axis { Label = "price", Unit = findings.Parts.Currency, From = 0.0 }
                        : new Axis { Label = $"{ChooseTables.Name(up)}, of the car as it is", Unit = "%" },
                    Height = 90.0,
                    Marks =
                    [
                        .. cloud,
                        new Mark
                        {
                            X = 100.0,
                            Y = up == WishKind.Money ? 0.0 : 100.0,
                            Label = ChooseParts.AsItIs,
                            Symbol = MarkSymbol.Cross,
                            Ink = Ink.Third,
                        },
                        .. findings.List.Select(one => new Mark
                        {
                            X = In.Percent.Of(one.Entry.Tried.Stated.Wishes[0]),
                            Y = Height(one.Entry.Tried.Stated),
                            Label = one.Letter,
                            IsHere = one.Letter == "A",
                            Symbol = MarkSymbol.Dot,
                            Ink = Ink.First,
                        }),
                    ],
                },
            ],
        };
    }
}
