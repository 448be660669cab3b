namespace Heaveline.Figures;

/// <summary>One storey of a figure: a chart, a map, a scene, a table or a row of categories.</summary>
public abstract record Panel
{
    // Closed to this assembly: the press must know how to draw every kind.
    private protected Panel()
    {
    }

    /// <summary>A short heading over the panel. Blank for none.</summary>
    public string Title { get; init => field = value ?? ""; } = "";
}
