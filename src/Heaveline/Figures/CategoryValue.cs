namespace Heaveline.Figures;

/// <summary>One value of a category, with its interval where it has one.</summary>
public sealed record CategoryValue
{
    /// <summary>The value, in the unit of the value axis.</summary>
    public required double Value { get; init => field = Drawable.Finite(value); }

    /// <summary>Lower end of its interval. Null for none.</summary>
    public double? Low { get; init => field = Drawable.Finite(value); }

    /// <summary>Upper end of its interval. Null for none.</summary>
    public double? High { get; init => field = Drawable.Finite(value); }

    /// <summary>The series it belongs to ("before"), named once above the panel. Blank for none.</summary>
    public string Series { get; init => field = value ?? ""; } = "";

    /// <summary>The ink of its series.</summary>
    public Ink Ink { get; init; } = Ink.First;
}
