namespace Heaveline.Recording;

/// <summary>One line of a record: an operation on lines before it, or where its pair comes from.</summary>
/// <param name="Does">What it does.</param>
/// <param name="A">First line that it reads; of a source, its number.</param>
/// <param name="B">The second.</param>
/// <param name="C">The third.</param>
/// <param name="D">The fourth.</param>
/// <param name="Front">First number of a constant, bit by bit: equal lines are one.</param>
/// <param name="Rear">Second number of a constant.</param>
internal readonly record struct RecordedLine(Operation Does, int A = 0, int B = 0, int C = 0, int D = 0, long Front = 0, long Rear = 0)
{
    /// <summary>How many lines it reads.</summary>
    public int Reads => Does switch
    {
        <= Operation.Road => 0,
        Operation.Negative or Operation.Root or Operation.Exchanged or Operation.First or Operation.Second => 1,
        Operation.Fused => 3,
        Operation.Choice or Operation.PowerAbove => 4,
        _ => 2,
    };

    /// <summary>Whether its pair comes from outside.</summary>
    public bool IsSource => Does <= Operation.Road;

    /// <summary>The pair of a constant.</summary>
    public (double Front, double Rear) Constant => (BitConverter.Int64BitsToDouble(Front), BitConverter.Int64BitsToDouble(Rear));

    /// <summary>A line that it reads.</summary>
    public int Read(int k) => k switch { 0 => A, 1 => B, 2 => C, _ => D };

    /// <summary>A constant.</summary>
    public static RecordedLine Of(double front, double rear) =>
        // Zero has one sign here: nothing that is recorded divides by it.
        new(Operation.Constant, Front: BitConverter.DoubleToInt64Bits(front + 0.0), Rear: BitConverter.DoubleToInt64Bits(rear + 0.0));
}
