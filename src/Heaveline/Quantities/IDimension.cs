namespace Heaveline.Quantities;

/// <summary>A physical dimension as a type, so that a stiffness cannot be handed over as a mass.</summary>
public interface IDimension
{
    /// <summary>Exponents of metre, kilogram, second and radian.</summary>
    static abstract Exponents Exponents { get; }

    /// <summary>Name in words, lower case ("spring rate").</summary>
    static abstract string Name { get; }

    /// <summary>Symbol of the SI unit, empty for a plain number.</summary>
    static abstract string Symbol { get; }

    /// <summary>A unit that users of the trade would write, for examples and advice ("N/mm").</summary>
    static abstract string Usual { get; }
}
