namespace Heaveline.Figures;

/// <summary>One thing drawn in a scene. All places are in metres, z up.</summary>
public abstract record Shape
{
    // Closed to this assembly: the press must know how to draw every kind.
    private protected Shape()
    {
    }
}
