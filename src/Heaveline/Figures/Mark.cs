namespace Heaveline.Figures;

/// <summary>One point with a symbol and, if wanted, a label beside it.</summary>
public sealed record Mark
{
    /// <summary>Place along x, in the unit of the x axis.</summary>
    public required double X { get; init => field = Drawable.Finite(value); }

    /// <summary>Height, in the unit of the y axis.</summary>
    public required double Y { get; init => field = Drawable.Finite(value); }

    /// <summary>The label. Blank for none.</summary>
    public string Label { get; init => field = value ?? ""; } = "";

    /// <summary>Lower end of the doubt of the height; null for none.</summary>
    public double? Low { get; init => field = Drawable.Finite(value); }

    /// <summary>Upper end of the doubt of the height; null for none.</summary>
    public double? High { get; init => field = Drawable.Finite(value); }

    /// <summary>Whether it is what is in hand: drawn larger.</summary>
    public bool IsHere { get; init; }

    /// <summary>The symbol.</summary>
    public MarkSymbol Symbol { get; init; } = MarkSymbol.Dot;

    /// <summary>The ink.</summary>
    public Ink Ink { get; init; } = Ink.Third;
}
