using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>Band and number of frequencies of a <see cref="RideSpectrum"/>. Immutable: change a copy with <c>with</c>.</summary>
public sealed record SpectrumOptions
{
    /// <summary>The usual settings.</summary>
    public static SpectrumOptions Default { get; } = new();

    /// <summary>Lowest frequency, Hz; the road's longest wave at the speed if that is higher. 0.01 to 10. Default 0.2.</summary>
    public double Low { get; init => field = Checked.Within(value, 0.01, 10.0); } = 0.2;

    /// <summary>Highest frequency, Hz; the road's shortest wave at the speed if that is lower. 10 to 1000. Default 40.</summary>
    public double High { get; init => field = Checked.Within(value, 10.0, 1000.0); } = 40.0;

    /// <summary>
    /// Number of frequencies (–), a multiple of 4, 12 to 1024. Default 80, for which the worst of 1200 designs and speeds was 2e-8 off.
    /// </summary>
    public int Points
    {
        get;
        init => field = value is >= 12 and <= 1024 && value % 4 == 0
            ? value
            : throw new RefusedValueException("number of frequencies", $"{value}", "a multiple of 4 between 12 and 1024", "Take 80.");
    } = 80;

    /// <summary>Two wheel tracks that both axles run in; null: each wheel in its own track of an isotropic surface.</summary>
    public TrackCoherence? Tracks { get; init; }
}
