namespace Heaveline.Elements;

/// <summary>
/// What an element sees of its car, as one number: shares of the four wheels' travels S and of the flows q of the left and the right line, all from
/// the reference state. By virtual work its force acts on each by the same share.
/// </summary>
internal sealed class Sight
{
    private static readonly Sight[] Own = [AlongAxle(0, 1.0), AlongAxle(1, 1.0), AlongAxle(2, 1.0), AlongAxle(3, 1.0)];

    private readonly double[] wheels;
    private readonly double[] flows;

    private Sight(double[] wheels, double[] flows) => (this.wheels, this.flows) = (wheels, flows);

    /// <summary>Shares of the wheels' travels: front left, front right, rear left, rear right.</summary>
    public ReadOnlySpan<double> Wheels => wheels;

    /// <summary>Shares of the flows from front to rear: left, right.</summary>
    public ReadOnlySpan<double> Flows => flows;

    /// <summary>
    /// The travel at a place along a solid axle: a share of the wheel's own, the rest of the other wheel's. 1 for independent wheels.
    /// </summary>
    public static Sight Along(int corner, double share = 1.0) => share == 1.0 ? Own[corner] : AlongAxle(corner, share);

    private static Sight AlongAxle(int corner, double share)
    {
        var wheels = new double[4];
        wheels[corner] = share;
        wheels[corner ^ 1] += 1.0 - share;
        return new Sight(wheels, [0.0, 0.0]);
    }

    /// <summary>A wheel against the other of its axle.</summary>
    public static Sight Across(int corner)
    {
        var wheels = new double[4];
        (wheels[corner], wheels[corner ^ 1]) = (1.0, -1.0);
        return new Sight(wheels, [0.0, 0.0]);
    }

    /// <summary>Both wheels of a side together.</summary>
    public static Sight Side(int side, double front, double rear)
    {
        var wheels = new double[4];
        (wheels[side], wheels[side + 2]) = (front, rear);
        return new Sight(wheels, [0.0, 0.0]);
    }

    /// <summary>
    /// The volume pushed out of a displacer, less what flows to the other end of the line; <paramref name="flows"/>: whether any does.
    /// </summary>
    public static Sight Volume(int corner, double area, bool flows)
    {
        var sight = new Sight(new double[4], new double[2]);
        sight.wheels[corner] = area;
        sight.flows[corner % 2] = !flows ? 0.0 : corner < 2 ? -1.0 : 1.0;
        return sight;
    }

    /// <summary>The flow of a line.</summary>
    public static Sight Flow(int side)
    {
        var sight = new Sight(new double[4], new double[2]);
        sight.flows[side] = 1.0;
        return sight;
    }

    /// <summary>Whether it is <see cref="Along"/> of a corner at some share of the wheel's own travel.</summary>
    public bool IsAlong(int corner) =>
        Apart(corner, corner ^ 1) && wheels[corner] is > 0.0 and <= 1.0 && wheels[corner ^ 1] == 1.0 - wheels[corner] && Flowless;

    /// <summary>Whether it is the travel of one wheel.</summary>
    public bool IsAt(int corner) => IsAlong(corner) && wheels[corner] == 1.0;

    /// <summary>Whether it is <see cref="Across"/> from a corner.</summary>
    public bool IsAcross(int corner) => Apart(corner, corner ^ 1) && wheels[corner] == 1.0 && wheels[corner ^ 1] == -1.0 && Flowless;

    /// <summary>Whether it is <see cref="Side"/> of a side.</summary>
    public bool IsSide(int side) => Apart(side, side + 2) && Flowless;

    /// <summary>Whether it is <see cref="Volume"/> of a corner.</summary>
    public bool IsVolume(int corner, bool flow) =>
        Apart(corner, corner) && flows[corner % 2] == (!flow ? 0.0 : corner < 2 ? -1.0 : 1.0) && flows[1 - (corner % 2)] == 0.0;

    /// <summary>Whether it is <see cref="Flow"/> of a side.</summary>
    public bool IsFlow(int side) => !wheels.AsSpan().ContainsAnyExcept(0.0) && flows[side] == 1.0 && flows[1 - side] == 0.0;

    /// <summary>Whether both see the same.</summary>
    public bool Is(Sight other) => wheels.AsSpan().SequenceEqual(other.wheels) && flows.AsSpan().SequenceEqual(other.flows);

    private bool Flowless => flows[0] == 0.0 && flows[1] == 0.0;

    // Whether no wheels but these have a share.
    private bool Apart(int one, int other)
    {
        for (var i = 0; i < 4; i++)
        {
            if (i != one && i != other && wheels[i] != 0.0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>What is seen when wheels and lines stand there, or move so.</summary>
    /// <param name="travels">S of the four wheels, or their rates.</param>
    /// <param name="flow">q of the lines, left and right.</param>
    public double Of(ReadOnlySpan<double> travels, ReadOnlySpan<double> flow)
    {
        var sum = (flows[0] * flow[0]) + (flows[1] * flow[1]);
        for (var i = 0; i < 4; i++)
        {
            sum += wheels[i] * travels[i];
        }

        return sum;
    }
}
