namespace Heaveline.Quantities;

/// <summary>A unit that numbers are shown in, with the factor that makes it of an SI value.</summary>
/// <param name="Si">Symbol of the SI unit, empty for a plain number.</param>
/// <param name="Symbol">The unit as shown, "–" for a plain number.</param>
/// <param name="Factor">Shown units per SI unit.</param>
public sealed record ShownUnit(string Si, string Symbol, double Factor)
{
    /// <summary>The symbol in plain letters, for headings that programs read ("deg"); empty for a plain number.</summary>
    public string Plain =>
        Symbol == "–" ? "" : Symbol.Replace("°", "deg", StringComparison.Ordinal).Replace(" s½", "·s^0.5", StringComparison.Ordinal);

    /// <summary>What stands behind a number in a sentence: the symbol with its space, a degree sign without, nothing for a plain number.</summary>
    public string Suffix => Symbol is "–" ? "" : Symbol is "°" ? Symbol : " " + Symbol;

    /// <summary>An SI value in this unit.</summary>
    public double Of(double si) => Factor * si;

    /// <summary>An SI value in this unit; null of nothing.</summary>
    public double? Of(double? si) => Factor * si;

    /// <summary>A value in this unit, in SI.</summary>
    public double ToSi(double shown) => shown / Factor;
}
