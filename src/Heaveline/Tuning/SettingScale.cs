using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>What a slider of one setting runs over.</summary>
/// <param name="Unit">Unit of all numbers here; empty for a plain number.</param>
/// <param name="Described">The value in the state described.</param>
/// <param name="From">Left end.</param>
/// <param name="To">Right end.</param>
/// <param name="Step">Step of the slider.</param>
/// <param name="Remark">What is kept or follows, one short clause; empty when nothing needs saying.</param>
public sealed record SettingScale(string Unit, double Described, double From, double To, double Step, string Remark = "")
{
    /// <summary>Decimals that the step needs.</summary>
    public int Decimals => Math.Max(0, (int)Math.Ceiling(-Math.Log10(Step) - 1e-9));

    /// <summary>The step nearest to a value, between the ends and what is described.</summary>
    internal double OnStep(double value) => Math.Clamp(
        Math.Round(Math.Round(value / Step) * Step, 10), Math.Min(From, Described), Math.Max(To, Described));

    /// <summary>The same slider in the units of a reader: ends on its own steps, which are no coarser.</summary>
    public SettingScale InUnits(ReaderUnits units)
    {
        var factor = units.Factor(Unit);
        if (factor == 1.0)
        {
            return this with { Remark = units.Text(Remark) };
        }

        var wanted = Step * factor;
        var ten = Math.Pow(10.0, Math.Floor(Math.Log10(wanted)));
        var step = ten * new[] { 5.0, 2.0, 1.0 }.First(part => part == 1.0 || part * ten <= wanted * (1.0 + 1e-9));
        return new SettingScale(
            units.Unit(Unit),
            Described * factor,
            Math.Ceiling((From * factor / step) - 1e-9) * step,
            Math.Floor((To * factor / step) + 1e-9) * step,
            step,
            units.Text(Remark));
    }

    /// <summary>A slider about a positive value, with a step of about a two-hundredth of it.</summary>
    public static SettingScale About(double described, string unit, double least, double most, string remark = "")
    {
        var step = Math.Pow(10.0, Math.Floor(Math.Log10(described)) - 2.0);
        step *= described / step > 400.0 ? 5.0 : 1.0;
        return new SettingScale(
            unit, described, Math.Max(step, Math.Round(least * described / step) * step), Math.Round(most * described / step) * step, step, remark);
    }
}
