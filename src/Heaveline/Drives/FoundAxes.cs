namespace Heaveline.Drives;

/// <summary>Up, two directions across it, and forward among them as braking and turning tell it.</summary>
/// <param name="Level">Up and the accelerometer's gain.</param>
/// <param name="First">The first direction across up, of length 1.</param>
/// <param name="Second">To the left of it.</param>
/// <param name="Fit">Forward by speed and turn rate; null without one of them or where the drive is too short.</param>
/// <param name="IsTurned">Whether the gyro turns by the other hand in that fit.</param>
internal sealed record FoundAxes(Levelling Level, Direction First, Direction Second, ForwardFit? Fit, bool IsTurned)
{
    /// <summary>The direction at an angle about up from the first.</summary>
    public Direction Along(double angle) => ((First * Math.Cos(angle)) + (Second * Math.Sin(angle))).Unit;
}
