using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>A road that one may ride on: heights to be shown, and the spectrum that is driven over in the long run.</summary>
public sealed record RideRoad
{
    private RideRoad(Road heights, bool isSample)
    {
        (Heights, IsSample) = (heights, isSample);
        Ground = RoadStudy.Run(new RoadAsked { Road = heights });
    }

    /// <summary>The random road in the long run; null where the road has no class.</summary>
    public NamedSpectrum? Spectrum { get; private init; }

    /// <summary>A road of heights: the named one, or a sample of the random one.</summary>
    public Road Heights { get; }

    /// <summary>What is to be said of those heights.</summary>
    public RoadAnswer Ground { get; }

    /// <summary>Why there is no spectrum; null where there is one.</summary>
    public string? WhyNone { get; private init; }

    /// <summary>Whether the heights are a drawn sample of a random road.</summary>
    public bool IsSample { get; }

    /// <summary>The road in words.</summary>
    public string Words => Spectrum is { } spectrum ? $"a random road of {spectrum.Name}" : Heights.Caption;

    /// <summary>A road of heights; its spectrum is the straight line fitted to that of its left track.</summary>
    public static RideRoad Of(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        var read = new RideRoad(road, isSample: false);
        var left = read.Ground.Tracks[0];
        if (left.Fit is not { } fit)
        {
            return read with { WhyNone = left.Refused.Count > 0 ? string.Join(' ', left.Refused) : $"{road.Name} has no spectrum." };
        }

        try
        {
            return read with { Spectrum = new NamedSpectrum($"the spectrum fitted to {road.Name}", fit.Line) };
        }
        catch (RefusedValueException refusal)
        {
            return read with { WhyNone = refusal.Message };
        }
    }

    /// <summary>A random road, half a kilometre of it drawn to be shown.</summary>
    /// <param name="name">What it is, so that "a random road of" may stand before it ("class C"), without its waviness.</param>
    /// <param name="density">Density at 0.1 cycles/m, m³.</param>
    /// <param name="waviness">Waviness (–).</param>
    public static RideRoad Random(string name, double density, double waviness)
    {
        var spectrum = new RoadSpectrum { Density = new Amount<RoadDensity>(density), Waviness = waviness };
        var heights = Road.From(new RandomRoad
        {
            Spectrum = spectrum,
            Track = new Amount<Length>(1.5),
            Length = new Amount<Length>(500.0),
            Seed = 1,
        });
        return new RideRoad(heights, isSample: true)
        {
            Spectrum = new NamedSpectrum(waviness == 2.0 ? name : FormattableString.Invariant($"{name}, waviness {waviness:G3}"), spectrum),
        };
    }
}
