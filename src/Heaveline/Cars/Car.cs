using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// One vehicle as measured in its reference state: standing empty on its wheels, with none of its loads.
/// Left and right springs, dampers and stops are alike; the weights may differ.
/// </summary>
public sealed record Car
{
    /// <summary>What the owner calls it.</summary>
    public required string Name { get; init => field = Checked.NotBlank(value, "Give the vehicle a name."); }

    /// <summary>Anything a reader should know about how it was measured.</summary>
    public string Note { get; init; } = "";

    /// <summary>Car or two-wheeler.</summary>
    public VehicleKind Kind { get; init; } = VehicleKind.Car;

    /// <summary>What a car looks like from its side, for drawings alone; null when nobody said. A two-wheeler has none.</summary>
    public BodyStyle? BodyStyle { get; init; }

    /// <summary>Distance between the axles, m. 0.5 to 10 m.</summary>
    public required Amount<Length> Wheelbase
    {
        get;
        init => field = Checked.Within(value, 0.5, 10.0, "Measure from wheel centre to wheel centre along the car.");
    }

    /// <summary>What each wheel carries in the reference state.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>The sprung body: heights and inertias.</summary>
    public required Body Body { get; init; }

    /// <summary>Front axle.</summary>
    public required Axle Front { get; init; }

    /// <summary>Rear axle.</summary>
    public required Axle Rear { get; init; }

    /// <summary>Front–rear interconnection of each side, or null.</summary>
    public Interconnection? Interconnection { get; init; }

    /// <summary>How its links carry braking and driving forces, or null when that is not known.</summary>
    public BrakeGeometry? Brakes { get; init; }

    /// <summary>Places where people sit.</summary>
    public IReadOnlyList<Seat> Seats { get; init; } = [];

    /// <summary>The dipped headlamp, or null.</summary>
    public Headlamp? Headlamp { get; init; }

    /// <summary>Named loads. The state without any load is always there and need not be listed.</summary>
    public IReadOnlyList<LoadState> LoadStates { get; init; } = [];

    /// <summary>Both axles, front first.</summary>
    public IReadOnlyList<Axle> Axles => [Front, Rear];
}
