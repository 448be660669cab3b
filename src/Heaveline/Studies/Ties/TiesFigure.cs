using Heaveline.Figures;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>The car before the readings and after them, drawn.</summary>
internal static class TiesFigure
{
    public const string Id = "ties";

    public static Figure Of(TiesAsked asked, TieFit fit)
    {
        var values = fit.Estimates.Select(e =>
        {
            var measure = TiesTable.Of(e);
            CategoryValue At(double value, double low, double high) =>
                new() { Value = measure.Unit.Of(value), Low = measure.Unit.Of(low), High = measure.Unit.Of(high) };
            return new PairedValue(
                measure.Label,
                measure.Unit.Symbol,
                At(e.File, e.Before.Low, e.Before.High),
                fit.IsBelieved ? At(e.Value, e.Low, e.High) : null,
                null);
        });
        var figure = PairedFigure.Of(
            $"What cable ties say of {asked.Car.Name}",
            "",
            "the car file, and what was thought possible",
            fit.IsBelieved ? "after the readings" : null,
            [.. values]);
        return figure with
        {
            Caption = $"{TiesWords.Head(asked)} {(fit.IsBelieved ? "" : "The readings are not of this car: nothing is said.")}".TrimEnd(),
            SignNote = "Upper: before the readings; lower: after them. Bars: nine cases of ten. "
                + "What the readings do not tell stays as it was thought possible.",
        };
    }
}
