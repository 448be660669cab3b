namespace Heaveline.Camera.Drawn;

/// <summary>Where a drawn car is at an instant, m; heights from level road, up.</summary>
/// <param name="FrontAxle">Place of the front axle along the road.</param>
/// <param name="Front">Height of the body above the front axle.</param>
/// <param name="Rear">Height of the body above the rear axle.</param>
/// <param name="FrontWheel">Height of the front wheel.</param>
/// <param name="RearWheel">Height of the rear wheel.</param>
internal readonly record struct DrawnInstant(double FrontAxle, double Front, double Rear, double FrontWheel, double RearWheel)
{
    /// <summary>Pitch of the body, rad, nose-down positive.</summary>
    /// <param name="wheelbase">Distance between the axles, m.</param>
    public double Pitch(double wheelbase) => (Rear - Front) / wheelbase;
}
