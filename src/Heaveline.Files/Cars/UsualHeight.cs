namespace Heaveline.Files.Cars;

/// <summary>
/// How high the centre of gravity of a car lies that nobody has tilted, by what it looks like from its side. Source: rollover measurements of the
/// new-car assessment programme of the US National Highway Traffic Safety Administration, 2004: medians over the vehicles of each kind whose figures
/// agree with each other; the doubt holds nine of ten of them. Vans there are people carriers. Of kit cars nothing was measured there: common
/// practice, no source.
/// </summary>
internal static class UsualHeight
{
    private const string Measured = "measured by the US road safety agency, 2004";

    /// <summary>The height with its doubt, and what it is the usual one of.</summary>
    /// <param name="style">The word of the body style; null where none is said.</param>
    public static (string Value, string By) Of(string? style) => style switch
    {
        "off-roader" => ("0.68 m ± 6 cm", $"median of 21 off-roaders {Measured}"),
        "pick-up" => ("0.67 m ± 8 cm", $"median of 5 pick-ups {Measured}"),
        "van" => ("0.63 m ± 10 cm", $"median of 3 people carriers {Measured}"),
        "kit-car" => ("0.45 m ± 8 cm", "usual for a kit car (common practice, no source)"),
        _ => ("0.55 m ± 5 cm", $"median of 18 saloons, hatchbacks and estates {Measured}"),
    };
}
