using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Recording;

/// <summary>Both axles of one car in one block, as <see cref="OneBlock"/> has them, each number noting what is done to it.</summary>
internal readonly unsafe struct RecordEnds : IEnds<RecordLane, RecordLane>
{
    public static int Blocks => 1;

    public static RecordLane Sum(RecordLane front, RecordLane rear) => front + RecordLane.Swap(front);

    public static RecordLane Difference(RecordLane front, RecordLane rear) =>
        (front - RecordLane.Swap(front)) * RecordLane.From([1.0, -1.0]);

    // The road's pairs stand as the block reads them: left and right, each of both axles.
    public static RecordLane* Road(Quad<RecordLane>* road, RecordLane* room) => (RecordLane*)road;

    public static RecordLane* Road(double* road, RecordLane* room) => throw new NotSupportedException("A road in numbers cannot be recorded.");

    public static void Record(RecordLane* to, RecordLane value) => *to = RecordLane.First(value);

    public static void Record(RecordLane* to, RecordLane frontLeft, RecordLane frontRight, RecordLane rearLeft, RecordLane rearRight)
    {
        to[0] = RecordLane.First(frontLeft);
        to[1] = RecordLane.First(frontRight);
        to[2] = RecordLane.Second(frontLeft);
        to[3] = RecordLane.Second(frontRight);
    }
}
