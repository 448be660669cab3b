namespace Heaveline.Quantities;

/// <summary>
/// Exponents of metre, kilogram, second and radian in a product of units. The radian counts, so that an angle is not taken for a slope.
/// </summary>
public readonly record struct Exponents(int Metre, int Kilogram, int Second, int Radian)
{
    /// <summary>Exponents of a product of two units.</summary>
    public static Exponents operator +(Exponents a, Exponents b) =>
        new(a.Metre + b.Metre, a.Kilogram + b.Kilogram, a.Second + b.Second, a.Radian + b.Radian);

    /// <summary>Exponents of a unit raised to a power.</summary>
    public static Exponents operator *(Exponents a, int power) =>
        new(a.Metre * power, a.Kilogram * power, a.Second * power, a.Radian * power);
}
