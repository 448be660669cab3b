using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>How rough one wheel track is: spectrum, fitted class and roughness index, or in words why one of them is not to be had.</summary>
public sealed record RoadRoughness
{
    /// <summary>
    /// From this scatter of the bands about the line on, in what chance allows (–), a track is no road of a class: a few waves or steps stand out.
    /// Random roads of 100 m to 1 km scatter by 0.8 to 1.2; single waves by 2.5 to 10, on lines that no road has. Own choice.
    /// </summary>
    internal const double MostScatter = 2.5;

    /// <summary>Spacing at which the track was read, m.</summary>
    public required double Spacing { get; init; }

    /// <summary>Its spectrum, or null.</summary>
    public ProfileSpectrum? Spectrum { get; init; }

    /// <summary>The line through its spectrum and the class, or null.</summary>
    public SpectrumFit? Fit { get; init; }

    /// <summary>Its roughness index, or null.</summary>
    public Iri? Index { get; init; }

    /// <summary>What was refused and why, one sentence each.</summary>
    public required IReadOnlyList<string> Refused { get; init; }

    /// <summary>Reads one track at the mean distance of its knots, or at 50 mm when they lie closer.</summary>
    public static RoadRoughness Of(Profile track) => Of(track, CancellationToken.None);

    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal static RoadRoughness Of(Profile track, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(track);
        var mean = (track.End - track.Start) / Math.Max(1, track.Knots.Length - 1);
        var spacing = new Amount<Length>(Math.Clamp(mean, 0.01, 0.25));
        var refused = new List<string>();
        var heights = EqualSamples.Of(track, spacing, stop);
        var spectrum = Try(() => ProfileSpectrum.Of(heights, spacing, stop), "spectrum", refused);
        return new RoadRoughness
        {
            Spacing = spacing.Si,
            Spectrum = spectrum,
            Fit = spectrum is null ? null : Try(() => Straight(SpectrumFit.Of(spectrum)), "class", refused),
            Index = Try(() => Iri.Of(heights, spacing, null, stop), "roughness index", refused),
            Refused = refused,
        };
    }

    private static SpectrumFit Straight(SpectrumFit fit) => fit.Scatter <= MostScatter && fit.Waviness is > 0.5 and < 5.0
        ? fit
        : throw new RefusedValueException(
            "spectrum of a road class",
            FormattableString.Invariant($"{fit.Scatter:F1} times as far from a straight line of waviness {fit.Waviness:F1} as chance allows"),
            FormattableString.Invariant($"at most {MostScatter:F1} times as far from one of waviness 0.5 to 5"),
            "A few waves or steps stand out: no class says what such a road is like.");

    private static T? Try<T>(Func<T> of, string what, List<string> refused)
        where T : class
    {
        try
        {
            return of();
        }
        catch (RefusedValueException no)
        {
            refused.Add($"No {what}: {no.Message}");
            return null;
        }
    }
}
