using System.Text;
using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>What ties say as a variant of the car file: the numbers that are said, with their doubts.</summary>
internal static class TiesVariant
{
    // An interval of 90 % to the half-width that holds 19 times out of 20.
    private const double Wider = 2.0 / Gaussian.Ninety;

    public static byte[] Of(TiesAsked asked, TieFit fit)
    {
        var text = new StringBuilder();
        text.Append($"# What cable ties say of {asked.CarFile}, {asked.Car.Load.Name}; keep it beside that file.\n");
        text.Append($"variant: {asked.Car.Car.Name} by its ties\nof: {asked.CarFile}\n");
        text.Append("note: Numbers that the ties said; the rest is as the car file has it.\n");
        if (!Changes(asked, fit).Any())
        {
            throw new RefusedValueException(
                "variant by the ties",
                "without a number",
                "one that the ties say something for",
                "Leave --variant out: nothing is said to be changed.");
        }

        text.Append("change:\n");
        foreach (var end in Changes(asked, fit).GroupBy(c => c.End))
        {
            text.Append($"  {CornerNames.Of(end.Key)}:\n");
            foreach (var (_, line) in end)
            {
                text.Append($"    {line}\n");
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static IEnumerable<(AxleEnd End, string Line)> Changes(TiesAsked asked, TieFit fit)
    {
        foreach (var e in fit.Estimates.Where(e => e.IsSaid))
        {
            var axle = asked.Car.Car.Axles[(int)e.End];
            var half = 0.5 * Wider * (e.High - e.Low);
            var line = e.Number switch
            {
                TieNumber.Damping => Damper(axle.Damper.Law, e.Value, half),
                TieNumber.Friction => $"friction: {{half-width: {Newtons(e.Value, half)}}}",
                TieNumber.BumpStop => $"bump-stop: {{clearance: {QuantityText.Format(new Amount<Length>(e.Value, new Doubt(half)), "mm", 3)}}}",
                _ when axle.Spring.Law is LinearSpring { Dimensions: null } spring =>
                    (axle.Spring.Swap is null ? "spring" : "bought-spring") + ": {rate: "
                    + QuantityText.Format(new Amount<Stiffness>(e.Value * spring.Rate.Si, new Doubt(half * spring.Rate.Si)), "N/mm", 3) + "}",
                _ => null,
            };
            if (line is not null)
            {
                yield return (e.End, line);
            }
        }
    }

    private static string? Damper(DamperLaw law, double factor, double half) => law switch
    {
        TableDamper table => $"damper: {{bump: {Rows(table.Bump, factor / table.Factor.Si)}, "
            + $"rebound: {Rows(table.Rebound, factor / table.Factor.Si)}, "
            + $"table-doubt: ± {Digits(In.Percent.Of(half / factor))} %{(table.Factor.Doubt.Shared is null ? "" : ", rig: ~")}}}",
        RatioDamper ratio => "damper: {damping-ratio: "
            + QuantityText.Format(new Amount<Plain>(ratio.Ratio.Si * factor, new Doubt(ratio.Ratio.Si * half)), "", 3) + "}",
        _ => null,
    };

    private static string Rows(ForceTable side, double factor) => "[" + string.Join(", ", Enumerable.Range(0, side.At.Count)
        .Where(i => side.At[i] > 0.0)
        .Select(i => $"[{QuantityText.Format(new Amount<Velocity>(side.At[i]), "m/s", 6)}, "
            + $"{QuantityText.Format(new Amount<Force>(factor * side.Force[i]), "N", 4)}]")) + "]";

    private static string Newtons(double value, double half) => QuantityText.Format(new Amount<Force>(value, new Doubt(half)), "N", 3);

    private static string Digits(double percent) => Numeral.Of(percent, 0);
}
