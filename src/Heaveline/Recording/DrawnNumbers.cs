using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Recording;

/// <summary>
/// What a page draws of a sample, as a reader sees it: worked out by the record itself, so that no page has to know how a car is built.
/// </summary>
internal sealed class DrawnNumbers
{
    /// <summary>Heights of the body over front and rear axle from standing, mm.</summary>
    public const int Heights = 0;

    /// <summary>Pitch, nose up, degrees.</summary>
    public const int Pitch = 2;

    /// <summary>Pitch acceleration, nose up, rad/s².</summary>
    public const int PitchAcceleration = 3;

    /// <summary>Roll, right side down, degrees.</summary>
    public const int Roll = 4;

    /// <summary>Wheel travel from the reference state, mm, bump positive: four corners.</summary>
    public const int Travel = 5;

    /// <summary>Tyre loads, share of standing, %: four corners.</summary>
    public const int Load = 9;

    /// <summary>
    /// Heights from the reference state, m: body over the left wheels, front and rear; centres of the left wheels; those of the right ones.
    /// </summary>
    public const int Scene = 13;

    public const int Count = 19;

    private readonly RecordLane[] x;
    private readonly RecordLane[] y;
    private readonly RecordLane left;
    private readonly RecordLane[] arm;

    /// <param name="numbers">The car, whose numbers the record meets here.</param>
    public DrawnNumbers(RideNumbers numbers)
    {
        x = [.. numbers.X.Select(RecordLane.Of)];
        y = [.. numbers.Y.Select(RecordLane.Of)];
        left = RecordLane.Of(numbers.Rolls ? numbers.Body.LeftOfMiddle : 0.0);
        arm = [.. numbers.Y.Select(side => RecordLane.Of(numbers.Rolls ? side + numbers.Body.LeftOfMiddle : 0.0))];
    }

    /// <summary>What is drawn of a sample.</summary>
    /// <param name="sample">The sample, as <see cref="Channel"/> says.</param>
    public RecordLane[] Of(ReadOnlySpan<RecordLane> sample)
    {
        var (z, theta, phi) = (sample[Channel.Heave], sample[Channel.Pitch], sample[Channel.Roll]);
        RecordLane[] body = [Over(0, z, theta, phi), Over(2, z, theta, phi)];
        RecordLane[] standing = [Over(0, Position(0), Position(1), Position(2)), Over(2, Position(0), Position(1), Position(2))];
        var lean = Position(2) + phi;
        var (travel, load, over) = (new RecordLane[4], new RecordLane[4], new RecordLane[4]);
        for (var i = 0; i < 4; i++)
        {
            travel[i] = Trim(i) + (((sample[Channel.Wheel + i] - z) + (x[i] * theta)) - (y[i] * phi));
            load[i] = Constant(100.0) + (sample[Channel.Tyre + i] * (Constant(100.0) / Trim(8 + i)));
            over[i] = (standing[i / 2] + body[i / 2]) + (arm[i] * lean);
        }

        var (millimetres, degrees) = (Constant(In.Millimetres.Factor), Constant(In.Degrees.Factor));
        return
        [
            millimetres * body[0], millimetres * body[1],
            -(degrees * theta), -sample[Channel.Accelerations + Channel.Pitch], degrees * phi,
            .. travel.Select(s => millimetres * s),
            .. load,
            over[0], over[2], over[0] + travel[0], over[2] + travel[2], over[1] + travel[1], over[3] + travel[3],
        ];
    }

    // Height of the body over the middle of an axle.
    private RecordLane Over(int corner, RecordLane z, RecordLane theta, RecordLane phi) => (z - (x[corner] * theta)) - (left * phi);

    private static RecordLane Constant(double value) => new(Record.Writing.Constant(value, value));

    private static RecordLane Trim(int i) => new(Record.Writing.Source(Operation.Given, LiveGiven.Trim + i));

    private static RecordLane Position(int i) => new(Record.Writing.Source(Operation.Given, LiveGiven.Position + i));
}
