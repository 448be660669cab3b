using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Drives.Planning;

/// <summary>What a test day is planned for.</summary>
public sealed record TestDayWish
{
    /// <summary>The car under its load.</summary>
    public required RideModel Model { get; init; }

    /// <summary>The car as it will be; null where no change is asked about.</summary>
    public RideModel? After { get; init; }

    /// <summary>The humps there are.</summary>
    public required ImmutableArray<TestHump> Humps { get; init; }

    /// <summary>The number that is to be known.</summary>
    public CarNumber Number { get; init; } = CarNumber.FrequencyRatio;

    /// <summary>To how much it is to be known, half-width of the 90 % interval of its logarithm.</summary>
    public required double HalfWidth
    {
        get;
        init => field = Checked.Within(value, 1e-3, 1.0, "Say to how much of itself a number is to be known, 0.1 % to 100 %.");
    }

    /// <summary>How far behind the front axle the phone lies, m.</summary>
    public double Phone
    {
        get;
        init => field = Checked.Within(value, -PhonePlace.Farthest, PhonePlace.Farthest, "Give the phone's distance behind the front axle.");
    }

    = 1.3;

    /// <summary>A drive of this car that was driven already: what it tells counts too; null: none.</summary>
    public CarFromDrive? First { get; init; }

    /// <summary>How rough the road about the humps is.</summary>
    public RoadClass Class { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = RoadClass.B;

    /// <summary>Samples a second of the phone, Hz.</summary>
    public double Rate { get; init => field = Checked.Within(value, 25.0, 400.0, "Give the phone's rate, 25 to 400 Hz."); } = 100.0;
}
