using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Figures;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What a test day is asked to tell.</summary>
public sealed record PlanAsked
{
    /// <summary>The car under its load.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>The car as it will be, under the same load; null where no change is to be shown.</summary>
    public LoadedCar? Change { get; init; }

    /// <summary>The humps that can be driven over.</summary>
    public required ImmutableArray<TestHump> Humps { get; init => field = Drawable.Some(value, "Give at least one hump."); }

    /// <summary>The number that is to be known.</summary>
    public CarNumber Number { get; init; } = CarNumber.FrequencyRatio;

    /// <summary>The log of a first drive of this car under this load, whose word counts too; null: none.</summary>
    public Log? First { get; init; }

    /// <summary>What is known of that drive; the wheelbase is the car file's.</summary>
    public EventSettings OfFirst { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>
    /// What that drive is called where it is written down as driven with this car under this load; blank: nothing says which it was.
    /// </summary>
    public string FirstDrive { get; init => field = value ?? ""; } = "";

    /// <summary>How rough the road about the humps is.</summary>
    public RoadClass Class { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = RoadClass.B;

    /// <summary>How far behind the front axle the phone will lie, m.</summary>
    public double Phone { get; init; } = 1.3;
}
