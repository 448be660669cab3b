namespace Heaveline.Models;

/// <summary>
/// How a car stands under a load state, all measured from its reference state. Corners: front left, front right, rear left, rear right; of a
/// two-wheeler both corners of an end are its one wheel.
/// </summary>
public sealed record Trim
{
    /// <summary>Wheel travel used up, m, bump positive.</summary>
    public required IReadOnlyList<double> Travel { get; init; }

    /// <summary>Load of each whole wheel on the ground, N, unsprung weight included. See <see cref="AxleLoad"/> for sums.</summary>
    public required IReadOnlyList<double> WheelLoad { get; init; }

    /// <summary>Suspension force on the body at each whole wheel, N: the sprung load.</summary>
    public required IReadOnlyList<double> SprungLoad { get; init; }

    /// <summary>Load of the front and of the rear axle on the ground, N.</summary>
    public required IReadOnlyList<double> AxleLoad { get; init; }

    /// <summary>Suspension forces on the body over the front and over the rear axle, N.</summary>
    public required IReadOnlyList<double> AxleSprungLoad { get; init; }

    /// <summary>Weight on all wheels, N.</summary>
    public double Weight => AxleLoad[0] + AxleLoad[1];

    /// <summary>Travel left until the bump stop touches, m; infinite without a stop, negative when it is touched already.</summary>
    public required IReadOnlyList<double> BumpLeft { get; init; }

    /// <summary>Travel left until the rebound stop touches, m; infinite without a stop.</summary>
    public required IReadOnlyList<double> ReboundLeft { get; init; }

    /// <summary>Change of the body's height above the ground over the front axle, m; sinking is negative.</summary>
    public required double FrontHeight { get; init; }

    /// <summary>Change of the body's height above the ground over the rear axle, m.</summary>
    public required double RearHeight { get; init; }

    /// <summary>Pitch of the body, rad, nose-down positive.</summary>
    public required double Pitch { get; init; }

    /// <summary>Roll of the body, rad, right-side-down positive.</summary>
    public required double Roll { get; init; }

    /// <summary>
    /// Gauge pressure at the four displacers, Pa: one pressure at both ends of a side unless its line is shut. Empty without a fluid line.
    /// </summary>
    public required IReadOnlyList<double> LinePressure { get; init; }

    /// <summary>
    /// Half-width of the band within which friction lets the body settle anywhere, m: F_c over the wheel rate, front and rear. 0 without friction.
    /// </summary>
    public required IReadOnlyList<double> FrictionBand { get; init; }

    internal static Trim From(RideNumbers n, TrimSolution s, IReadOnlyList<double> wheelRate)
    {
        var middle = -n.Body.LeftOfMiddle * s.Roll;
        // A two-wheeler's corners are halves of its wheels.
        var whole = n.Rolls ? 1.0 : 2.0;
        return new Trim
        {
            Travel = s.Travel,
            WheelLoad = [.. s.Load.Select(load => whole * load)],
            SprungLoad = [.. s.Force.Select(force => whole * force)],
            AxleLoad = [s.Load[0] + s.Load[1], s.Load[2] + s.Load[3]],
            AxleSprungLoad = [s.Force[0] + s.Force[1], s.Force[2] + s.Force[3]],
            BumpLeft = [.. Enumerable.Range(0, 4).Select(i => n.Elements.BumpTouch[i] - s.Travel[i])],
            ReboundLeft = [.. Enumerable.Range(0, 4).Select(i => s.Travel[i] - n.Elements.ReboundTouch[i])],
            FrontHeight = s.Heave - (n.X[0] * s.Pitch) + middle,
            RearHeight = s.Heave - (n.X[2] * s.Pitch) + middle,
            Pitch = s.Pitch,
            Roll = s.Roll,
            LinePressure = n.Elements.HoldsFluid ? s.Pressure : [],
            FrictionBand = [Band(0), Band(2)],
        };

        double Band(int i) => (n.Elements.Frictions[i]?.Slider?.Force ?? 0.0) / wheelRate[i];
    }
}
