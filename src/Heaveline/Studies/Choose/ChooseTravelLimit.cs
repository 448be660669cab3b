namespace Heaveline.Studies;

/// <summary>How much travel every wheel of an axle must keep to its stop, standing, under any load of the car.</summary>
/// <param name="Front">At the front wheels, m; null for no limit.</param>
/// <param name="Rear">At the rear wheels, m; null for no limit.</param>
public sealed record ChooseTravelLimit(double? Front, double? Rear)
{
    /// <summary>In what share of the drawn cars that must hold.</summary>
    public double Share { get; init; } = ChooseLimits.UsualShare;
}
