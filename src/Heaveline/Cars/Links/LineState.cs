namespace Heaveline.Cars;

/// <summary>What a fluid line does to the flow.</summary>
public enum LineState
{
    /// <summary>Fluid with mass and friction.</summary>
    Pipe,

    /// <summary>No flow at all: two separate springs.</summary>
    Shut,

    /// <summary>No resistance and no inertia: one pressure.</summary>
    Open,
}
