using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of a rule of the trade: for which car, over which bump, by which measure.</summary>
public sealed record RuleAsked
{
    /// <summary>The car under the load that is mapped.</summary>
    public required LoadedCar Car { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>A road with a single bump, see <see cref="NoBump"/>.</summary>
    public required Road Road
    {
        get;
        init => field = value?.Event is not null
            ? value
            : throw new RefusedValueException(
                "road", value?.Caption ?? "missing", "one with a single bump", "Without one hit and settling cannot be told apart.");
    }

    /// <summary>The rule.</summary>
    public TradeRule Rule { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = TradeRule.All[0];

    /// <summary>By what it is judged.</summary>
    public Measure<Pass> Measure { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = SettlingCatalogue.RmsPitch;

    /// <summary>
    /// Other measures that the answer holds a map by, see <see cref="RuleAnswer.Others"/>; those that the car does not have are left out.
    /// </summary>
    public IReadOnlyList<Measure<Pass>> Also { get; init; } = [];

    /// <summary>The slowest speed, m/s.</summary>
    public double Slowest { get; init => field = DrivingSpeed.Checked(value); } = In.KilometresPerHour.ToSi(20.0);

    /// <summary>The fastest speed, m/s; above the slowest.</summary>
    public double Fastest { get; init => field = DrivingSpeed.Checked(value); } = In.KilometresPerHour.ToSi(120.0);

    /// <summary>How finely it is mapped.</summary>
    public RuleDetail Detail { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = RuleDetail.Plain;

    /// <summary>
    /// Whether the map under the one load is all: where the car stands under the others, and which damping suits a rough road, is left out.
    /// </summary>
    public bool MapAlone { get; init; }

    /// <summary>Why no rule can be judged on a road; null where one can.</summary>
    /// <param name="road">The road.</param>
    public static string? NoBump(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        return road.Event is null
            ? $"{road.Caption} has no single bump, so that hit and settling cannot be told apart and the rule cannot be judged on it."
            : null;
    }
}
