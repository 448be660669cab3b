namespace Heaveline.Modes;

/// <summary>One of the two undamped body modes of the bounce–pitch model: a frequency and the point about which the body swings.</summary>
public sealed record BodyMode
{
    /// <summary>Circular frequency ω, rad/s.</summary>
    public required double Omega { get; init; }

    /// <summary>Motion centre ahead of the loaded centre of gravity x = z/θ, m; behind is negative; infinite for pure heave.</summary>
    public required double NodeAhead { get; init; }

    /// <summary>Motion centre behind the front axle, m; ahead of it is negative; infinite for pure heave.</summary>
    public required double NodeBehindFrontAxle { get; init; }

    /// <summary>The car's wheelbase, m.</summary>
    public required double Wheelbase { get; init; }

    /// <summary>Whether the centre lies between the axles.</summary>
    public bool NodeBetweenAxles => NodeBehindFrontAxle >= 0.0 && NodeBehindFrontAxle <= Wheelbase;

    /// <summary>Motion of the body over the front and over the rear axle (–), up positive, the farther of the two 1.</summary>
    public (double Front, double Rear) Ends
    {
        get
        {
            // About a point n behind the front axle: −n·θ over the front axle and (L − n)·θ over the rear one.
            var (front, rear) = double.IsFinite(NodeBehindFrontAxle) ? (NodeBehindFrontAxle, NodeBehindFrontAxle - Wheelbase) : (1.0, 1.0);
            var most = Math.Abs(front) >= Math.Abs(rear) ? front : rear;
            return (front / most, rear / most);
        }
    }

    /// <summary>What moves in it.</summary>
    public BodySwing Swing => BodySwings.Of(Ends.Front, Ends.Rear);

    /// <summary>Frequency ω/2π, Hz.</summary>
    public double Frequency => Omega / (2.0 * Math.PI);
}
