namespace Heaveline.Figures;

/// <summary>A place in a scene, m: x along the car, z up.</summary>
public readonly record struct ScenePoint
{
    /// <summary>Makes a place.</summary>
    /// <param name="x">Along the car, m.</param>
    /// <param name="z">Up, m.</param>
    public ScenePoint(double x, double z)
    {
        X = Drawable.Finite(x, "x");
        Z = Drawable.Finite(z, "z");
    }

    /// <summary>Along the car, m.</summary>
    public double X { get; }

    /// <summary>Up, m.</summary>
    public double Z { get; }
}
