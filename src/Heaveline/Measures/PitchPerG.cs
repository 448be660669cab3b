using Heaveline.Elements;
using Heaveline.Models;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Measures;

/// <summary>
/// Static pitch per steady longitudinal acceleration, on the tangent at trim, tyres included, a fluid line at rest. Nose-down positive.
/// </summary>
public sealed record PitchPerG
{
    /// <summary>Pitch at one g, rad: of braking (nose-down) or of driving (nose-up, negative).</summary>
    public required double Angle { get; init; }

    /// <summary>The same if the links carried nothing, rad.</summary>
    public required double WithoutLinks { get; init; }

    /// <summary>Change of the body's height over the front axle at one g, m.</summary>
    public required double FrontHeight { get; init; }

    /// <summary>Change of the body's height over the rear axle at one g, m.</summary>
    public required double RearHeight { get; init; }

    /// <summary>The first stop met on the way to one g, as far as the slope at rest tells; null where none is.</summary>
    public required StopContact? FirstStop { get; init; }

    /// <summary>Load moved between the axles at one g, N.</summary>
    public required double MovedLoad { get; init; }

    /// <summary>Part of the pitch that the links take away (–): the anti-dive or anti-squat share as the whole car feels it.</summary>
    public double LinkShare => 1.0 - (Angle / WithoutLinks);

    internal static PitchPerG Of(RideModel model, Matrix<double> suspension, double direction)
    {
        var push = StaticPush.Of(model, direction * Gravity.Standard, 0.0);
        var position = StaticTangent.Solve(model, suspension, push);
        return new PitchPerG
        {
            Angle = position[1],
            WithoutLinks = StaticTangent.Solve(model, suspension, push with { Link = StaticPush.None.Link })[1],
            FrontHeight = position[0] - (model.X[0] * position[1]),
            RearHeight = position[0] - (model.X[2] * position[1]),
            FirstStop = StopContact.Of(model, [.. Enumerable.Range(0, 4).Select(i =>
                position[3 + i] - position[0] + (model.X[i] * position[1]))]),
            MovedLoad = StaticPush.MovedMass(model) * Gravity.Standard,
        };
    }
}
