namespace Heaveline.Figures.Silhouettes;

/// <summary>A corner of an outline.</summary>
/// <param name="X">Along the car, m.</param>
/// <param name="Z">Up, m.</param>
/// <param name="Radius">How far from the corner its rounding begins, m; 0 for a sharp one.</param>
/// <param name="ArchRadius">Radius of the wheel arch that leads to it from the corner before, m; 0 for a straight side.</param>
internal readonly record struct SilhouetteCorner(double X, double Z, double Radius = 0.0, double ArchRadius = 0.0)
{
    /// <summary>A rounded corner at a place.</summary>
    public static SilhouetteCorner At(ScenePoint place, double radius) => new(place.X, place.Z, radius);
}
