using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A place on the body where a person sits: a rigid point, with the head above it.</summary>
public sealed record Seat
{
    /// <summary>Its name ("driver").</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the seat a name."); }

    /// <summary>Hip point behind the front axle, m.</summary>
    public required Amount<Length> BehindFrontAxle
    {
        get;
        init => field = Checked.Within(value, -5.0, 15.0, "Measure along the car from the front wheel centre.");
    }

    /// <summary>Hip point left of the middle, m; negative to the right.</summary>
    public Amount<Length> LeftOfMiddle { get; init => field = Checked.Within(value, -2.0, 2.0, "Right of the middle is negative."); } = new(0.0);

    /// <summary>Hip point above the ground in the reference state, m.</summary>
    public required Amount<Length> Height { get; init => field = Checked.Within(value, 0.0, 4.0, "Measure from the ground."); }

    /// <summary>Head (ear) above the hip point, m.</summary>
    public Amount<Length> HeadAboveSeat { get; init => field = Checked.Within(value, 0.0, 1.5, "About 0.7 m for an adult."); } = new(0.70);
}
