using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>How much travel every wheel of an axle must keep to its stop, standing, under any load of the car.</summary>
/// <param name="Front">At the front wheels, m; null for no limit.</param>
/// <param name="Rear">At the rear wheels, m; null for no limit.</param>
public sealed record ChooseTravelLimit(double? Front, double? Rear)
{
    /// <summary>More than that no wheel has, m.</summary>
    internal const double Most = 0.5;

    /// <summary>At the front wheels, m; null for no limit.</summary>
    public double? Front { get; init => field = Left(value); } = Left(Front);

    /// <summary>At the rear wheels, m; null for no limit.</summary>
    public double? Rear { get; init => field = Left(value); } = Left(Rear);

    /// <summary>In what share of the drawn cars that must hold.</summary>
    public double Share { get; init => field = Checked.Within(value, 0.0, 1.0, "It is a share of all drawn cars."); } = ChooseLimits.UsualShare;

    private static double? Left(double? value) =>
        value is { } v ? Checked.Within(v, 0.0, Most, "Give the travel that must be left, in metres.", "travel left") : null;
}
