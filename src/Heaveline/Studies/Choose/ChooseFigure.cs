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

    // No axis shows less than so much, per cent.
    private const double Narrowest = 1.0;

    /// <summary>The figure.</summary>
    public static Figure Of(ChooseFindings findings, ChooseWords words)
    {
        var found = findings.Found;
        var up = findings.Parts.HasPrices ? WishKind.Money
            : new[] { WishKind.Ride, WishKind.Hit }.Where(found.Wishes.Contains).Append(WishKind.Parts).First();
        double Height(DrivenSetup one) => up switch
        {
            WishKind.Money => findings.Parts.Space.Price(one.Setup),
            WishKind.Parts => findings.Parts.Space.Changed(one.Setup),
            _ => In.Percent.Of(one.Wishes[found.Wishes.IndexOf(up)]),
        };
        // All of them by the same number: the shortlist alone was ridden.
        var name = up == WishKind.Ride ? "ride, dampers by their chord" : ChooseTables.Name(up);
        HashSet<long> shaky = [.. findings.Trial.Tried.Skip(1).Where(one => !Shortlist.Keeps(one, found.Task.Limits))
            .Select(one => one.Stated.Setup)];
        DrivenSetup[] allowed = [.. found.Driven.Where(one => one.IsAllowed && one.Setup != 0L)];
        var driven = found.Driven.ToDictionary(one => one.Setup);
        DrivenSetup[] shown = [.. allowed, .. findings.List.Select(one => driven[one.Entry.Setup])];
        var step = Math.Max(1, (allowed.Length + MostPoints - 1) / MostPoints);
        ImmutableArray<Mark> cloud =
        [
            .. allowed.Where((one, n) => n % step == 0 || shaky.Contains(one.Setup)).Select(one => new Mark
            {
                X = In.Percent.Of(one.Wishes[0]),
                Y = Height(one),
                Symbol = shaky.Contains(one.Setup) ? MarkSymbol.Ring : MarkSymbol.Dot,
                Ink = Ink.Fifth,
            }),
        ];
        return new Figure
        {
            Title = $"{findings.Asked.Car.Name}: what to buy",
            AltText = $"{Quantities.InvariantText.Count(allowed.Length, "setup by its", "setups by their")} settling and {name}; "
                + (findings.List.IsEmpty ? "none is worth buying." : $"{findings.List.Length} of them lettered."),
            Caption = $"{words.Finding.Text} {words.Asked.Text}",
            SignNote = "Cross: the car as it is. Letters: the shortlist. Grey: other setups that keep the limits as stated"
                + (step > 1 ? FormattableString.Invariant($", one of {step} drawn") : "")
                + (shaky.Count > 0 ? ". Rings: not to be relied on, in the drawn cars they do not keep the limits" : "")
                + ". Both ways less is better; settling in the car as stated.",
            Size = FigureSize.Page,
            Panels =
            [
                new ChartPanel
                {
                    X = Wide("settling, of the car as it is", [100.0, .. shown.Select(one => In.Percent.Of(one.Wishes[0]))]),
                    Y = up == WishKind.Money
                        ? new Axis { Label = "price", Unit = findings.Parts.Currency, From = 0.0 }
                        : up == WishKind.Parts ? new Axis { Label = "places changed", Unit = "", From = 0.0 }
                        : Wide($"{name}, of the car as it is", [100.0, .. shown.Select(Height)]),
                    Height = 90.0,
                    Marks =
                    [
                        .. cloud,
                        new Mark
                        {
                            X = 100.0,
                            Y = up is WishKind.Money or WishKind.Parts ? 0.0 : 100.0,
                            Label = ChooseParts.AsItIs,
                            Symbol = MarkSymbol.Cross,
                            Ink = Ink.Third,
                        },
                        .. findings.List.Select(one => new Mark
                        {
                            X = In.Percent.Of(one.Entry.Tried.Stated.Wishes[0]),
                            Y = Height(driven[one.Entry.Setup]),
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

    // Differences of less than a per cent are not blown up to the whole width of the paper.
    private static Axis Wide(string label, double[] values)
    {
        var (least, most) = (values.Min(), values.Max());
        var axis = new Axis { Label = label, Unit = "%" };
        return most - least >= Narrowest
            ? axis
            : axis with { From = (0.5 * (least + most)) - (0.5 * Narrowest), To = (0.5 * (least + most)) + (0.5 * Narrowest) };
    }
}
