using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Web.Tuning;

/// <summary>More in the car than a load state has: a mass over the rear axle. Kept, it becomes a load state of its own.</summary>
internal static class Luggage
{
    /// <summary>Its name in an address.</summary>
    public const string Key = "luggage";

    // Height of its middle over a boot's floor: common practice, no source.
    private const double Height = 0.70;

    /// <summary>The slider, kg.</summary>
    public static SettingScale Scale { get; } = new("kg", 0.0, 0.0, 250.0, 5.0, "its middle 0.70 m above the road, over the rear axle");

    /// <summary>A load state with more in it.</summary>
    /// <param name="state">What is in the car already.</param>
    /// <param name="car">The car.</param>
    /// <param name="kilograms">Mass, kg, at least 0.</param>
    public static LoadState On(LoadState state, Car car, double kilograms)
    {
        if (!(kilograms is >= 0.0 and <= 5000.0))
        {
            throw new RefusedValueException(
                "Luggage over the rear axle",
                $"{Rounded.Refused(kilograms)} kg",
                "between 0 and 5000 kg",
                "0 is the load state as it is.");
        }

        var mass = Math.Round(kilograms, 1);
        return mass == 0.0 ? state : new LoadState
        {
            Name = $"{state.Name} and {Rounded.Text(mass)} kg more",
            Loads =
            [
                .. state.Loads,
                new Load
                {
                    Name = "luggage over the rear axle",
                    Mass = new Amount<Mass>(mass),
                    BehindFrontAxle = car.Wheelbase,
                    Height = new Amount<Length>(Height),
                },
            ],
        };
    }

    /// <summary>The load state in words; none without more in it.</summary>
    public static IEnumerable<KeyEdit> Words(LoadState chosen, LoadState loaded, Node root) =>
        ReferenceEquals(chosen, loaded) ? [] : [KeyEdit.Put(["loads", loaded.Name], LoadRows.Of(root, loaded, chosen.Name))];
}
