namespace Heaveline.Passes.Steps;

/// <summary>What follows a block of further elements: kinks of each kind on each side; and which curved laws there are.</summary>
internal readonly record struct ShapedCount(int Springs, int Dampers, int Bumps, int Rebounds, bool Gas, bool CurvedStops)
{
    /// <summary>Kinks of one side.</summary>
    public int Side => Springs + Dampers + Bumps + Rebounds;
}
