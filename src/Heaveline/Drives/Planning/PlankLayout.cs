using System.Collections.Immutable;
using System.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Drives.Planning;

/// <summary>Planks laid one behind the other, alike in both wheel tracks, the first at x = 0.</summary>
public sealed record PlankLayout
{
    /// <summary>The raised places, in order, none touching the next.</summary>
    public required ImmutableArray<LaidBoards> Places { get; init; }

    /// <summary>Where the last one ends, m.</summary>
    public double End => Places[^1].End;

    /// <summary>Greatest height, m.</summary>
    public double Height => Places.Max(p => p.Height);

    /// <summary>The planks as a road.</summary>
    public Road Road
    {
        get
        {
            var outline = new Outline(0.0, 0.0);
            foreach (var place in Places)
            {
                outline.LineTo(place.Start, 0.0).LineTo(place.Start + place.Edge, place.Height)
                    .LineTo(place.End - place.Edge, place.Height).LineTo(place.End, 0.0);
            }

            var profile = outline.Close();
            return new Road
            {
                Name = "planks",
                Kind = RoadKind.Obstacle,
                Left = profile,
                Right = profile,
                Event = new RoadEvent(0.0, End),
                Caption = $"{Words}, both tracks",
            };
        }
    }

    /// <summary>"2 planks: 45 mm high and 0.39 m long from 0 m, 45 mm and 0.39 m from 2.14 m".</summary>
    public string Words => (Places.Length == 1 ? "plank: " : FormattableString.Invariant($"{Places.Length} planks: "))
        + string.Join(", ", Places.Select((p, k) => FormattableString.Invariant(
            $"{In.Millimetres.Of(p.Height):0.#} mm {(k == 0 ? "high " : "")}and {p.Length:0.###} m {(k == 0 ? "long " : "")}from {p.Start:0.##} m")));

    /// <summary>
    /// Fourier integral of the heights over distance, ∫ h(x)·e^{−i2πnx} dx, m²: each place a trapezium, which is the product of two boxes convolved,
    /// h·(ℓ − e)·sinc(n(ℓ − e))·sinc(ne)·e^{−i2πn·middle} with sinc y = sin(πy)/(πy).
    /// </summary>
    /// <param name="n">Waves per metre, 0 or above.</param>
    public Complex Spectrum(double n)
    {
        var sum = Complex.Zero;
        foreach (var p in Places)
        {
            var flank = p.Length - p.Edge;
            sum += Complex.FromPolarCoordinates(p.Height * flank * Sinc(n * flank) * Sinc(n * p.Edge), -Math.PI * n * (p.Start + p.End));
        }

        return sum;
    }

    private static double Sinc(double y) => Math.Abs(y) < 1e-6 ? 1.0 : Math.Sin(Math.PI * y) / (Math.PI * y);
}
