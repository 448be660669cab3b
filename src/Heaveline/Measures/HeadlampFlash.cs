using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>
/// How often the dipped beam's cut-off rises above an oncoming driver's eye during a pass, from t = 0 on. The eye is on the level of the road's
/// start, always at the same distance ahead of the lamp.
/// </summary>
public sealed record HeadlampFlash
{
    /// <summary>Height of an oncoming eye above the road, m: an assumption, no source.</summary>
    public const double AssumedEye = 1.20;

    /// <summary>Distance of the eye ahead of the lamp, m.</summary>
    public required double Distance { get; init; }

    /// <summary>Height of the eye, m.</summary>
    public required double Eye { get; init; }

    /// <summary>Part of the time that the cut-off is at or above the eye (–).</summary>
    public required double Share { get; init; }

    /// <summary>How often it comes up to the eye; a beam that starts above counts once.</summary>
    public required int Flashes { get; init; }

    /// <summary>Greatest height of the cut-off there, m.</summary>
    public required double Highest { get; init; }

    /// <summary>The flashes at some distances; empty without a lamp.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="distances">Distances of the eye, m, above 0.</param>
    /// <param name="eye">Height of the eye, m.</param>
    public static IReadOnlyList<HeadlampFlash> Of(Pass pass, IReadOnlyList<double> distances, double eye = AssumedEye)
    {
        if (HeadlampAim.Of(pass.Model) is not { } aim)
        {
            return [];
        }

        foreach (var distance in distances)
        {
            Checked.Within(distance, 1.0, 1000.0, "Give how far ahead the other driver is.", "EyeDistance");
        }

        Checked.Within(eye, 0.3, 4.0, "About 1.2 m in a car, 2.3 m in a lorry.", "EyeHeight");
        var ahead = pass.Model.Car.Headlamp!.AheadOfFrontAxle.Si;
        var whole = new Window(0.0, double.PositiveInfinity);
        var pitch = whole.Of(pass.Time.AsSpan(), pass.Pitch.AsSpan()).ToArray();
        var front = whole.Of(pass.Time.AsSpan(), pass.FrontHeight.AsSpan()).ToArray();
        return [.. distances.Select(d => At(d, eye, [.. pitch.Zip(front, (p, h) => aim.CutOffHeight(d) + h - ((ahead + d) * p))]))];
    }

    private static HeadlampFlash At(double distance, double eye, double[] height)
    {
        var flashes = 0;
        for (var k = 0; k < height.Length; k++)
        {
            if (height[k] >= eye && (k == 0 || height[k - 1] < eye))
            {
                flashes++;
            }
        }

        return new HeadlampFlash
        {
            Distance = distance,
            Eye = eye,
            Share = height.Length > 0 ? (double)height.Count(h => h >= eye) / height.Length : 0.0,
            Flashes = flashes,
            Highest = height.DefaultIfEmpty(double.NegativeInfinity).Max(),
        };
    }
}
