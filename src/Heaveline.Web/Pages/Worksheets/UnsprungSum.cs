using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Worksheets;

/// <summary>All unsprung mass of a car, from what is typed of its axles.</summary>
internal static class UnsprungSum
{
    /// <summary>The sum with its doubt, as it would be typed; empty where either axle's is missing or refused.</summary>
    /// <param name="front">Of the front axle.</param>
    /// <param name="rear">Of the rear axle.</param>
    public static string Of(string front, string rear)
    {
        var (one, other) = (QuantityText.Parse<Mass>(front), QuantityText.Parse<Mass>(rear));
        return one is { IsRead: true, Unit: { } unit } && other.IsRead
            ? QuantityText.Format(
                new Amount<Mass>(one.Amount.Si + other.Amount.Si, new Doubt(Math.Sqrt(
                    Math.Pow(one.Amount.Doubt.HalfWidth, 2) + Math.Pow(other.Amount.Doubt.HalfWidth, 2)))),
                unit.Symbol)
            : "";
    }
}
