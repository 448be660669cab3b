namespace Heaveline.Quantities;

/// <summary>
/// A unit of measurement: its symbol, its size in SI units and its exponents. Only units without an offset: a length, not a temperature in °C.
/// </summary>
public sealed record Unit
{
    // The size is kept as a mantissa and a power of ten: 9 mm is then 9/1000, the nearest double to 0.009, and not 9 × 0.001.
    private readonly double mantissa;
    private readonly int ten;

    internal Unit(string symbol, double mantissa, int ten, Exponents exponents)
    {
        Symbol = symbol;
        Exponents = exponents;
        this.mantissa = mantissa;
        this.ten = ten;
    }

    /// <summary>The symbol as users write it ("N/mm").</summary>
    public string Symbol { get; }

    /// <summary>Exponents of metre, kilogram, second and radian.</summary>
    public Exponents Exponents { get; }

    /// <summary>One of this unit in SI units; above zero.</summary>
    public double Factor => ToSi(1.0);

    /// <summary>A value in this unit, in SI units.</summary>
    public double ToSi(double value) => ten < 0 ? value * mantissa / Power(-ten) : value * mantissa * Power(ten);

    /// <summary>A value in SI units, in this unit.</summary>
    public double FromSi(double si) => ten < 0 ? si * Power(-ten) / mantissa : si / Power(ten) / mantissa;

    /// <summary>This unit times another one raised to a power, under a symbol of its own.</summary>
    internal Unit Times(Unit other, int power, string symbol)
    {
        var product = mantissa;
        for (var i = 0; i < Math.Abs(power); i++)
        {
            product = power > 0 ? product * other.mantissa : product / other.mantissa;
        }

        return new Unit(symbol, product, ten + (other.ten * power), Exponents + (other.Exponents * power));
    }

    // Exact up to 10^22, the last power of ten that a double holds without rounding.
    private static double Power(int ten)
    {
        var power = 1.0;
        for (var i = 0; i < ten; i++)
        {
            power *= 10.0;
        }

        return power;
    }
}
