using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>One round of readings with a scale under every wheel, each named after the wheel that stood on it.</summary>
/// <param name="FrontLeft">Front left wheel.</param>
/// <param name="FrontRight">Front right wheel.</param>
/// <param name="RearLeft">Rear left wheel.</param>
/// <param name="RearRight">Rear right wheel.</param>
/// <param name="Turned">Whether the car stood the other way round on the same places.</param>
public sealed record WheelReadings(
    Amount<Mass> FrontLeft, Amount<Mass> FrontRight, Amount<Mass> RearLeft, Amount<Mass> RearRight, bool Turned = false)
{
    internal double[] Values => [FrontLeft.Si, FrontRight.Si, RearLeft.Si, RearRight.Si];

    internal double[] Doubts => [FrontLeft.Doubt.HalfWidth, FrontRight.Doubt.HalfWidth, RearLeft.Doubt.HalfWidth, RearRight.Doubt.HalfWidth];
}
