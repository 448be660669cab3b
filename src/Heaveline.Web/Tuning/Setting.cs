using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Web.Tuning;

/// <summary>
/// One thing about a car that can be set: as a change of the record, and as the words that make the same change in a file. What a change rounds, it
/// rounds before the car is computed, so that the file read back is the car that was seen.
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

    /// <summary>The keys that make a described car's file say what this setting has made of the car.</summary>
    /// <param name="changed">The car with all settings on it.</param>
    /// <param name="root">The described car's whole document.</param>
    public abstract IEnumerable<KeyEdit> Words(Car changed, Node root);

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
