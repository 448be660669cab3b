using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A mass put into or onto the body at one place.</summary>
public sealed record Load
{
    /// <summary>Its name ("driver", "boot", "fuel").</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Say what it is."); }

    /// <summary>Mass, kg. Not zero; negative for something taken out.</summary>
    public required Amount<Mass> Mass { get; init => field = Checked.Finite(value, "Weigh it."); }

    /// <summary>Behind the front axle, m.</summary>
    public required Amount<Length> BehindFrontAxle { get; init => field = Checked.Within(value, -5.0, 15.0, "Ahead of the axle is negative."); }

    /// <summary>Left of the middle, m; negative to the right.</summary>
    public Amount<Length> LeftOfMiddle { get; init => field = Checked.Within(value, -3.0, 3.0, "Right of the middle is negative."); } = new(0.0);

    /// <summary>Above the ground, m.</summary>
    public required Amount<Length> Height { get; init => field = Checked.Within(value, 0.0, 5.0, "Measure from the ground to its middle."); }
}
