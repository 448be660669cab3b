using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Measures;

/// <summary>Height, sag and travel at one wheel, standing under a load.</summary>
public sealed record WheelStanding
{
    /// <summary>The wheel in words.</summary>
    public required string Wheel { get; init; }

    /// <summary>Change of the body's height above the ground at the wheel from the reference state, m; sinking is negative.</summary>
    public required double HeightChange { get; init; }

    /// <summary>Travel used up from the reference state, m: the sag of this load.</summary>
    public required double Sag { get; init; }

    /// <summary>Effective static deflection of the axle, sprung load over tangent rate, m.</summary>
    public required double Deflection { get; init; }

    /// <summary>Bump travel left until the stop touches, m; null without a stop.</summary>
    public required double? BumpLeft { get; init; }

    /// <summary>Bump travel left until metal meets metal, m; null when the stop has no hard end.</summary>
    public required double? BumpLeftToMetal { get; init; }

    /// <summary>Droop left until the rebound stop touches, m; null without a stop.</summary>
    public required double? DroopLeft { get; init; }

    /// <summary>Stress of the spring, or null when its wire, leaves or bar are not known.</summary>
    public required SpringStress? Stress { get; init; }

    /// <summary>Every wheel: four, or front and rear of a two-wheeler.</summary>
    public static IReadOnlyList<WheelStanding> Of(RideModel model)
    {
        var axles = AxleRide.Of(model);
        return [.. (model.Rolls ? new[] { 0, 1, 2, 3 } : [0, 2]).Select(i => Of(model, i, axles[i / 2]))];
    }

    private static WheelStanding Of(RideModel model, int i, AxleRide axle)
    {
        var trim = model.Trim;
        var height = i < 2 ? trim.FrontHeight : trim.RearHeight;
        var fromMiddle = model.Y[i] + model.Body.LeftOfMiddle;
        var metal = model.Numbers.Elements.BumpLimit[i];
        return new WheelStanding
        {
            Wheel = CornerNames.Of(i, model.Rolls),
            HeightChange = height + (model.Rolls ? fromMiddle * trim.Roll : 0.0),
            Sag = trim.Travel[i],
            Deflection = (axle.RatesAtRest ?? axle.Rates).Deflection,
            BumpLeft = Known(trim.BumpLeft[i]),
            BumpLeftToMetal = HasHardStop(model.Car.Axles[i / 2]) ? Known(metal - trim.Travel[i]) : null,
            DroopLeft = Known(trim.ReboundLeft[i]),
            Stress = SpringStress.Of(model, i),
        };
    }

    private static bool HasHardStop(Axle axle) => axle.BumpStop?.SolidAfter is not null;

    private static double? Known(double left) => double.IsFinite(left) ? left : null;
}
