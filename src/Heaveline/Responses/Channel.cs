namespace Heaveline.Responses;

/// <summary>Where each quantity stands in a recorded sample of a pass.</summary>
internal static class Channel
{
    public const int Heave = 0;
    public const int Pitch = 1;
    public const int Roll = 2;
    public const int Wheel = 3;
    public const int Flow = 7;
    public const int Rates = 9;
    public const int Accelerations = 18;
    public const int Tyre = 27;
    public const int Force = 31;
    public const int Count = 35;
}
