namespace Heaveline.Quantities;

/// <summary>
/// The symbols that texts may use and what each may mean. Two meanings stand where the trade uses one symbol for two things
/// (lb: a mass and a force; g: the gram and standard gravity; rpm: turns and radians): the wanted dimension decides.
/// Factors: NIST SP 811 (2008) appendix B; yard and pound: the agreement of 1959, 0.9144 m and 0.45359237 kg;
/// standard gravity: CGPM 1901, 9.80665 m/s².
/// </summary>
internal static class UnitTable
{
    private static readonly Exponents Number = new(0, 0, 0, 0);
    private static readonly Exponents Metre = new(1, 0, 0, 0);
    private static readonly Exponents Kilogram = new(0, 1, 0, 0);
    private static readonly Exponents Second = new(0, 0, 1, 0);
    private static readonly Exponents Radian = new(0, 0, 0, 1);
    private static readonly Exponents Hertz = new(0, 0, -1, 0);
    private static readonly Exponents Speed = new(1, 0, -1, 0);
    private static readonly Exponents Gravity = new(1, 0, -2, 0);
    private static readonly Exponents Newton = new(1, 1, -2, 0);
    private static readonly Exponents NewtonMetre = new(2, 1, -2, 0);
    private static readonly Exponents Pascal = new(-1, 1, -2, 0);
    private static readonly Exponents CubicMetre = new(3, 0, 0, 0);
    private static readonly Exponents PascalSecond = new(-1, 1, -1, 0);
    private static readonly Exponents Stokes = new(2, 0, -1, 0);

    // Pound-force: 0.45359237 × 9.80665 = 4.4482216152605 N, exactly.
    private const double PoundForce = 44482216152605.0;

    /// <summary>Every symbol with its meanings, the first one first.</summary>
    public static readonly Dictionary<string, Unit[]> Meanings = Rows()
        .GroupBy(unit => unit.Symbol, StringComparer.Ordinal)
        .ToDictionary(group => group.Key, group => group.ToArray(), StringComparer.Ordinal);

    private static IEnumerable<Unit> Rows() =>
        [
            .. Row(1, 0, Metre, "m"), .. Row(1, -6, Metre, "µm", "μm"), .. Row(1, -3, Metre, "mm"), .. Row(1, -2, Metre, "cm"),
            .. Row(1, 3, Metre, "km"),
            .. Row(254, -4, Metre, "in", "inch", "inches", "\"", "″"), .. Row(3048, -4, Metre, "ft", "foot", "feet", "'", "′"),
            .. Row(9144, -4, Metre, "yd"), .. Row(1609344, -3, Metre, "mile", "miles", "mi"),
            .. Row(1, 0, Kilogram, "kg"), .. Row(1, -3, Kilogram, "g"), .. Row(1, 3, Kilogram, "t"),
            .. Row(45359237, -8, Kilogram, "lb", "lbs", "lbm"), .. Row(28349523125, -12, Kilogram, "oz"),
            .. Row(PoundForce / 3048, -9, Kilogram, "slug", "slugs"),
            .. Row(1, 0, Second, "s"), .. Row(1, -3, Second, "ms"), .. Row(60, 0, Second, "min"), .. Row(3600, 0, Second, "h"),
            .. Row(1, 0, Newton, "N"), .. Row(1, 1, Newton, "daN"), .. Row(1, 3, Newton, "kN"),
            .. Row(PoundForce, -13, Newton, "lbf", "lb", "lbs"), .. Row(980665, -5, Newton, "kgf"),
            .. Row(1, 0, NewtonMetre, "Nm"), .. Row(1, 3, NewtonMetre, "kNm"),
            .. Row(1, 0, Radian, "rad"), .. Row(1, -3, Radian, "mrad"), .. Row(Math.PI / 180.0, 0, Radian, "deg", "°"),
            .. Row(1, 0, Hertz, "Hz"), .. Row(1, 3, Hertz, "kHz"), .. Row(1.0 / 60.0, 0, Hertz, "cpm", "rpm"),
            .. Row(Math.PI / 30.0, 0, Hertz + Radian, "rpm"),
            .. Row(1, 0, Pascal, "Pa"), .. Row(1, -3, Pascal, "mPa"), .. Row(1, 2, Pascal, "hPa", "mbar"), .. Row(1, 3, Pascal, "kPa"),
            .. Row(1, 5, Pascal, "bar"),
            .. Row(1, 6, Pascal, "MPa"), .. Row(1, 9, Pascal, "GPa"), .. Row(PoundForce / 64516, -5, Pascal, "psi"),
            .. Row(1, -3, CubicMetre, "L", "l"), .. Row(1, -6, CubicMetre, "mL", "ml", "cc"),
            .. Row(1609344.0 / 3600.0, -3, Speed, "mph"), .. Row(1.0 / 3.6, 0, Speed, "kph"),
            .. Row(980665, -5, Gravity, "g"),
            .. Row(1, -1, PascalSecond, "P"), .. Row(1, -3, PascalSecond, "cP"), .. Row(1, -4, Stokes, "St"), .. Row(1, -6, Stokes, "cSt"),
            .. Row(1, -2, Number, "%"), .. Row(1, 0, Number, "cycle", "cycles"),
        ];

    private static IEnumerable<Unit> Row(double mantissa, int ten, Exponents exponents, params string[] symbols) =>
        symbols.Select(symbol => new Unit(symbol, mantissa, ten, exponents));
}
