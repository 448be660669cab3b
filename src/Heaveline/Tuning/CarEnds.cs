using Heaveline.Cars;

namespace Heaveline.Tuning;

/// <summary>One end of a car, read and replaced by its name.</summary>
internal static class CarEnds
{
    public static Axle At(this Car car, AxleEnd end) => end == AxleEnd.Front ? car.Front : car.Rear;

    public static Car With(this Car car, AxleEnd end, Axle axle) => end == AxleEnd.Front ? car with { Front = axle } : car with { Rear = axle };

    /// <summary>Its key in a car file.</summary>
    public static string Key(this AxleEnd end) => end == AxleEnd.Front ? "front" : "rear";

    /// <summary>Its name at the beginning of a sentence.</summary>
    public static string Name(this AxleEnd end) => end == AxleEnd.Front ? "Front" : "Rear";
}
