namespace Heaveline.Figures;

/// <summary>One storey of a figure: a chart, a map, a scene, a table or a row of categories.</summary>
public abstract record Panel
{
    // Closed to this assembly: the press must know how to draw every kind.
    private protected Panel()
    {
    }

    /// <summary>What tells the panel from the others of its figure, whatever its words say: kebab-case. Blank where nobody asks.</summary>
    public string Id { get; init => field = value ?? ""; } = "";

    /// <summary>A short heading over the panel. Blank for none.</summary>
    public string Title { get; init => field = value ?? ""; } = "";
}
