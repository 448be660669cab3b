namespace Heaveline.Figures;

/// <summary>The symbol of a point. All differ in shape, so that colour is never needed to tell them apart.</summary>
public enum MarkSymbol
{
    /// <summary>A filled disc.</summary>
    Dot,

    /// <summary>An open circle.</summary>
    Ring,

    /// <summary>A filled square.</summary>
    Square,

    /// <summary>A filled triangle, point upwards.</summary>
    Triangle,

    /// <summary>An open diamond.</summary>
    Diamond,

    /// <summary>A slanting cross.</summary>
    Cross,
}
