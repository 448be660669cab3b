namespace Heaveline.Elements;

/// <summary>How the place of a spring between its seats is known.</summary>
internal enum StanceOrigin
{
    /// <summary>It stood there on the scales.</summary>
    Weighed,

    /// <summary>Bought: by its free length and the distance of the seats.</summary>
    Lengths,

    /// <summary>Bought: by its preload at full droop.</summary>
    Preload,

    /// <summary>Bought, but one of the lengths is not known: its seat is taken to stand where the car keeps its height.</summary>
    HeightKept,
}
