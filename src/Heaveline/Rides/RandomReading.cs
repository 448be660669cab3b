using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>One signal of a pass over a random road: mean, root mean square about it, and how far chance may have moved that.</summary>
public sealed record RandomReading
{
    internal RandomReading(RideSignal signal, double mean, double rms, double low, double high, double confidence) =>
        (Signal, Mean, Rms, Low, High, Confidence) = (signal, mean, rms, low, high, confidence);

    /// <summary>The signal.</summary>
    public RideSignal Signal { get; }

    /// <summary>Its mean from trim.</summary>
    public double Mean { get; }

    /// <summary>Root mean square about the mean.</summary>
    public double Rms { get; }

    /// <summary>Lower end of the interval that holds the root mean square of an endless road.</summary>
    public double Low { get; }

    /// <summary>Upper end.</summary>
    public double High { get; }

    /// <summary>Probability that the interval holds it.</summary>
    public double Confidence { get; }
}
