namespace Heaveline.Press.Plates;

/// <summary>The room beside every plot of a figure, the same for all, so that their axes stand in line; points.</summary>
/// <param name="Left">Left of the plots: numbers of the y axes, names of categories.</param>
/// <param name="Right">Right of the plots: names of curves and limits.</param>
internal readonly record struct Gutters(double Left, double Right)
{
    /// <summary>Room for both.</summary>
    public Gutters And(Gutters other) => new(Math.Max(Left, other.Left), Math.Max(Right, other.Right));
}
