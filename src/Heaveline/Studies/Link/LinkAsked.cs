using System.Collections.Immutable;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>Which car's interconnection is put on the bench, and over which bump at which speeds it is tried.</summary>
public sealed record LinkAsked
{
    /// <summary>The bump where none is named: the 75 mm round-top hump of roads and car parks.</summary>
    public static Road UsualHump { get; } = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    /// <summary>Speeds where none are named, m/s: below the usual one over that hump, at it and well above.</summary>
    public static ImmutableArray<double> UsualSpeeds { get; } = [.. new[] { 20.0, 40.0, 80.0 }.Select(In.KilometresPerHour.ToSi)];

    /// <summary>The car; it has an interconnection.</summary>
    public required LoadedCar Car
    {
        get;
        init => field = value?.Car.Interconnection is not null
            ? value
            : throw new RefusedValueException("interconnection", "none", "there", "Describe one under 'interconnection' in the car file.");
    }

    /// <summary>The car as its file has it, where another link is tried on it; null where it is as its file has it.</summary>
    public LoadedCar? Before { get; init; }

    /// <summary>The bump that it is driven over: the hump of car parks where none is named.</summary>
    public Road Road
    {
        get;
        init => field = value is null ? UsualHump
            : NoBump(value) is null ? value
            : throw new RefusedValueException(
                "road", value.Caption, "one with a single bump", "Without one hit and settling cannot be told apart.");
    } = UsualHump;

    /// <summary>Speeds at which it is driven, m/s.</summary>
    public ImmutableArray<double> Speeds { get; init => field = Drawable.Any(value); } = UsualSpeeds;

    /// <summary>The speed whose passes are drawn, m/s; null: the middle one.</summary>
    public double? Drawn { get; init; }

    /// <summary>Why a link cannot be tried over a road; null where it can.</summary>
    public static string? NoBump(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        return road.Event is null
            ? $"{road.Caption} has no single bump, so that hit and settling cannot be told apart; choose a road with a bump to try the link over."
            : null;
    }
}
