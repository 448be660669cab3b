namespace Heaveline.Quantities;

/// <summary>The units that numbers are shown in: the one place where SI values turn into what readers use.</summary>
public static class In
{
    /// <summary>A plain number.</summary>
    public static ShownUnit Plain { get; } = new("", "–", 1.0);

    /// <summary>A share in per cent.</summary>
    public static ShownUnit Percent { get; } = new("", "%", 100.0);

    /// <summary>Seconds.</summary>
    public static ShownUnit Seconds { get; } = new("s", "s", 1.0);

    /// <summary>ms of a time in s.</summary>
    public static ShownUnit Milliseconds { get; } = new("s", "ms", 1e3);

    /// <summary>µs of a time in s.</summary>
    public static ShownUnit Microseconds { get; } = new("s", "µs", 1e6);

    /// <summary>Hertz.</summary>
    public static ShownUnit Hertz { get; } = new("Hz", "Hz", 1.0);

    /// <summary>Metres.</summary>
    public static ShownUnit Metres { get; } = new("m", "m", 1.0);

    /// <summary>Millimetres.</summary>
    public static ShownUnit Millimetres { get; } = new("m", "mm", 1e3);

    /// <summary>Hours.</summary>
    public static ShownUnit Hours { get; } = new("s", "h", 1.0 / 3600.0);

    /// <summary>Kilometres an hour.</summary>
    public static ShownUnit KilometresPerHour { get; } = new("m/s", "km/h", 3.6);

    /// <summary>Metres per second squared.</summary>
    public static ShownUnit MetresPerSecondSquared { get; } = new("m/s²", "m/s²", 1.0);

    /// <summary>g, the standard acceleration of free fall.</summary>
    public static ShownUnit StandardGravities { get; } = new("m/s²", "g", 1.0 / 9.80665);

    /// <summary>Degrees.</summary>
    public static ShownUnit Degrees { get; } = new("rad", "°", 180.0 / Math.PI);

    /// <summary>Degrees a second.</summary>
    public static ShownUnit DegreesPerSecond { get; } = new("rad/s", "°/s", Degrees.Factor);

    /// <summary>Degrees times the root of a second: √∫θ²dt.</summary>
    public static ShownUnit DegreesRootSecond { get; } = new("rad·s^0.5", "° s½", Degrees.Factor);

    /// <summary>Degrees for each 100 mm of a rad/m: pitch for the lift of the wheels.</summary>
    public static ShownUnit DegreesFor100Millimetres { get; } = new("rad/m", "° for 100 mm", 0.1 * Degrees.Factor);

    /// <summary>Radians per second squared: the trade quotes pitch accelerations so.</summary>
    public static ShownUnit RadiansPerSecondSquared { get; } = new("rad/s²", "rad/s²", 1.0);

    /// <summary>Kilograms.</summary>
    public static ShownUnit Kilograms { get; } = new("kg", "kg", 1.0);

    /// <summary>Kilogram square metres.</summary>
    public static ShownUnit KilogramSquareMetres { get; } = new("kg m²", "kg m²", 1.0);

    /// <summary>A load in newtons as the mass that a scale under it shows, at 9.80665 m/s².</summary>
    public static ShownUnit KilogramsOfLoad { get; } = new("N", "kg", 1.0 / 9.80665);

    /// <summary>Newtons a millimetre.</summary>
    public static ShownUnit NewtonsPerMillimetre { get; } = new("N/m", "N/mm", 1e-3);

    /// <summary>Newton metres a degree.</summary>
    public static ShownUnit NewtonMetresPerDegree { get; } = new("N m/rad", "N m/°", 1.0 / Degrees.Factor);

    /// <summary>Bar.</summary>
    public static ShownUnit Bar { get; } = new("Pa", "bar", 1e-5);

    /// <summary>Megapascals.</summary>
    public static ShownUnit Megapascals { get; } = new("Pa", "MPa", 1e-6);

    /// <summary>Newtons.</summary>
    public static ShownUnit Newtons { get; } = new("N", "N", 1.0);

    /// <summary>Newton seconds a metre.</summary>
    public static ShownUnit NewtonSecondsPerMetre { get; } = new("N s/m", "N s/m", 1.0);

    /// <summary>Newton metre seconds: damping of a rotation.</summary>
    public static ShownUnit NewtonMetreSeconds { get; } = new("N m s", "N m s", 1.0);

    /// <summary>Metres a second.</summary>
    public static ShownUnit MetresPerSecond { get; } = new("m/s", "m/s", 1.0);

    /// <summary>Metres a kilometre, of a slope in metres a kilometre.</summary>
    public static ShownUnit MetresPerKilometre { get; } = new("m/km", "m/km", 1.0);

    /// <summary>Millionths of a cubic metre: the density of a road.</summary>
    public static ShownUnit MillionthsOfCubicMetres { get; } = new("m³", "1e-6 m³", 1e6);

    /// <summary>Metres per second to the power 1.5: ISO 2631-1's sickness dose.</summary>
    public static ShownUnit MetresPerSecondToTheOneAndAHalf { get; } = new("m/s^1.5", "m/s^1.5", 1.0);

    /// <summary>Metres per second to the power 1.75: ISO 2631-1's vibration dose.</summary>
    public static ShownUnit MetresPerSecondToTheOneAndThreeQuarters { get; } = new("m/s^1.75", "m/s^1.75", 1.0);

    /// <summary>A share in per cent of something that is named with it ("% of static").</summary>
    /// <param name="what">Of what.</param>
    public static ShownUnit PercentOf(string what) => new("", "% of " + what, 100.0);
}
