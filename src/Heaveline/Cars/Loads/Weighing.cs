using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>What each wheel presses on its scale in the reference state, kg.</summary>
public sealed record Weighing
{
    /// <summary>Front left wheel, kg.</summary>
    public required Amount<Mass> FrontLeft { get; init => field = Checked.Positive(value, Advice); }

    /// <summary>Front right wheel, kg.</summary>
    public required Amount<Mass> FrontRight { get; init => field = Checked.Positive(value, Advice); }

    /// <summary>Rear left wheel, kg.</summary>
    public required Amount<Mass> RearLeft { get; init => field = Checked.Positive(value, Advice); }

    /// <summary>Rear right wheel, kg.</summary>
    public required Amount<Mass> RearRight { get; init => field = Checked.Positive(value, Advice); }

    private const string Advice = "Give the reading of the scale under the wheel.";

    /// <summary>Front axle, both wheels, kg.</summary>
    public double Front => FrontLeft.Si + FrontRight.Si;

    /// <summary>Rear axle, both wheels, kg.</summary>
    public double Rear => RearLeft.Si + RearRight.Si;

    /// <summary>The whole vehicle, kg.</summary>
    public double Total => Front + Rear;

    /// <summary>From axle weighings: each wheel carries half, and the two halves share one scale's doubt.</summary>
    public static Weighing PerAxle(Amount<Mass> front, Amount<Mass> rear)
    {
        var f = Half(front, "front axle");
        var r = Half(rear, "rear axle");
        return new Weighing { FrontLeft = f, FrontRight = f, RearLeft = r, RearRight = r };
    }

    private static Amount<Mass> Half(Amount<Mass> axle, string scale)
    {
        var half = axle.Times(0.5);
        return half.Doubt.Shared is null ? half with { Doubt = half.Doubt with { Shared = scale, OfOneCar = true } } : half;
    }
}
