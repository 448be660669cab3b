using Heaveline.Cars;

namespace Heaveline.Modes;

/// <summary>The corners in words.</summary>
public static class CornerNames
{
    private static readonly string[] Names = ["front left", "front right", "rear left", "rear right"];

    /// <summary>Name of corner 0 to 3; a two-wheeler has front and rear only.</summary>
    public static string Of(int corner, bool hasSides) => hasSides ? Names[corner] : Of(corner < 2 ? AxleEnd.Front : AxleEnd.Rear);

    /// <summary>Name of an axle.</summary>
    public static string Of(AxleEnd end) => end == AxleEnd.Front ? "front" : "rear";
}
