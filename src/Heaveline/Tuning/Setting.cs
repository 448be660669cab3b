using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// One thing about a car that can be set, and how far. What a change rounds, it rounds before the car is computed, so that a file that says the same
/// is read back as the car that was seen. A part that is set is as doubtful in proportion as the one that it takes the place of.
/// </summary>
/// <param name="Key">Its name in an address.</param>
/// <param name="Label">Its name for a reader.</param>
internal abstract record Setting(string Key, string Label)
{
    // More than any car has of anything, in any unit of a slider: what is beyond it is refused as it was typed, before it is turned into SI units.
    private const double Most = 1e9;

    /// <summary>The slider for a car as described; null when the car has nothing of the kind.</summary>
    public abstract SettingScale? ScaleOf(Car described);

    /// <summary>The car with another value.</summary>
    /// <param name="car">The car, whatever else has been set on it.</param>
    /// <param name="value">The value in the unit of the scale.</param>
    /// <exception cref="RefusedValueException">The value is not possible.</exception>
    public abstract Car Apply(Car car, double value);

    /// <summary>Another value in an amount's place, as doubtful in proportion.</summary>
    protected static Amount<TDimension> AsDoubtful<TDimension>(Amount<TDimension> former, double si)
        where TDimension : struct, IDimension =>
        new(si, former.Si > 0.0 ? former.Times(si / former.Si).Doubt : default);

    /// <summary>A value above zero, or the refusal in the words and the unit of the slider.</summary>
    protected double Positive(double value, string unit, string advice) =>
        value is > 0.0 and <= Most ? value : throw Refused(value, unit, value > Most ? AtMost(unit) : $"above 0 {unit}".TrimEnd(), advice);

    /// <summary>A value that is zero or above.</summary>
    protected double NotNegative(double value, string unit, string advice) =>
        value is >= 0.0 and <= Most
            ? value
            : throw Refused(value, unit, value > Most ? AtMost(unit) : $"0 {unit}".TrimEnd() + " or above", advice);

    /// <summary>A value inside closed limits.</summary>
    protected double Within(double value, double low, double high, string unit, string advice) =>
        value >= low && value <= high
            ? value
            : throw Refused(value, unit, $"between {Rounded.Text(low)} and {Rounded.Text(high)} {unit}".TrimEnd(), advice);

    private static string AtMost(string unit) => $"at most {Rounded.Text(Most)} {unit}".TrimEnd();

    private RefusedValueException Refused(double value, string unit, string limit, string advice) =>
        new(Label, $"{Rounded.Refused(value)} {unit}".TrimEnd(), limit, advice);
}
