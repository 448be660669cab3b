using System.Collections.Immutable;
using Heaveline.Cars;

namespace Heaveline.Figures.Silhouettes;

/// <summary>What a silhouette is drawn from, m: measured where the file has it, else in the kind's usual proportion to the wheelbase.</summary>
/// <remarks>x runs forward from the rear axle, z up from the ground.</remarks>
internal sealed record SilhouetteMeasures
{
    /// <summary>How much wider than its wheel an arch and its edge are.</summary>
    private const double ArchRoom = 1.28;

    /// <summary>Between the axles.</summary>
    public required double Wheelbase { get; init => field = Drawable.Positive(value); }

    /// <summary>Of a wheel with its tyre.</summary>
    public required double WheelRadius { get; init => field = Drawable.Positive(value); }

    /// <summary>Foremost place of the body.</summary>
    public required double Nose { get; init => field = Drawable.Finite(value); }

    /// <summary>Rearmost place of the body.</summary>
    public required double Rump { get; init => field = Drawable.Finite(value); }

    /// <summary>Height of the roof.</summary>
    public required double Height { get; init => field = Drawable.Positive(value); }

    /// <summary>Height of the sill.</summary>
    public required double Sill { get; init => field = Drawable.Positive(value); }

    /// <summary>The dipped lamp.</summary>
    public required ScenePoint Lamp { get; init; }

    /// <summary>Ears of all who can sit in it.</summary>
    public required ImmutableArray<ScenePoint> Heads { get; init => field = Drawable.Any(value); }

    /// <summary>How much longer the vehicle is than a usual one of its kind (–).</summary>
    public required double Scale { get; init => field = Drawable.Positive(value); }

    /// <summary>The measures of a vehicle.</summary>
    /// <param name="car">The vehicle.</param>
    /// <param name="kind">What it is drawn as.</param>
    public static SilhouetteMeasures Of(Car car, SilhouetteKind kind)
    {
        var usual = SilhouetteProportion.Of(kind);
        var wheelbase = car.Wheelbase.Si;
        var scale = wheelbase / usual.Wheelbase;
        var radius = car.Brakes is { } brakes && brakes.WheelRadius != BrakeGeometry.AssumedWheelRadius
            ? brakes.WheelRadius.Si
            : usual.WheelRadius * Math.Clamp(scale, 0.8, 1.25);
        ImmutableArray<ScenePoint> heads =
            [.. car.Seats.Select(seat => new ScenePoint(wheelbase - seat.BehindFrontAxle.Si, seat.Height.Si + seat.HeadAboveSeat.Si))];
        var height = heads.IsEmpty ? usual.Height * scale : heads.Max(head => head.Z) + usual.RoofAboveHead;

        // Wheels and people have to find room in the body, whatever is usual.
        var ends = (ArchRoom * radius) + 0.08;
        var ahead = car.Headlamp is { } given ? given.AheadOfFrontAxle.Si + usual.LampInset : usual.FrontOverhang * scale;
        var nose = Math.Max(wheelbase + Math.Max(ahead, ends), heads.Select(head => head.X + 0.65).DefaultIfEmpty(0.0).Max());
        var rump = Math.Min(-Math.Max(usual.RearOverhang * scale, ends), heads.Select(head => head.X - 0.50).DefaultIfEmpty(0.0).Min());
        return new SilhouetteMeasures
        {
            Wheelbase = wheelbase,
            WheelRadius = radius,
            Nose = nose,
            Rump = rump,
            Height = Math.Max(height, 2.6 * radius),
            Sill = Math.Min(usual.Clearance * Math.Clamp(scale, 0.8, 1.25), 0.9 * radius),
            Lamp = car.Headlamp is { } lamp
                ? new(wheelbase + lamp.AheadOfFrontAxle.Si, lamp.Height.Si)
                : new(nose - usual.LampInset, LampHeight(kind) * height),
            Heads = heads,
            Scale = scale,
        };
    }

    /// <summary>A kind in its usual sizes, nobody and nothing measured.</summary>
    public static SilhouetteMeasures Usual(SilhouetteKind kind)
    {
        var usual = SilhouetteProportion.Of(kind);
        var ends = (ArchRoom * usual.WheelRadius) + 0.08;
        var nose = usual.Wheelbase + Math.Max(usual.FrontOverhang, ends);
        return new SilhouetteMeasures
        {
            Wheelbase = usual.Wheelbase,
            WheelRadius = usual.WheelRadius,
            Nose = nose,
            Rump = -Math.Max(usual.RearOverhang, ends),
            Height = usual.Height,
            Sill = usual.Clearance,
            Lamp = new(nose - usual.LampInset, LampHeight(kind) * usual.Height),
            Heads = [],
            Scale = 1.0,
        };
    }

    // Shares of the height, judged by eye.
    private static double LampHeight(SilhouetteKind kind) => kind switch
    {
        SilhouetteKind.Van => 0.34,
        SilhouetteKind.PickUp or SilhouetteKind.OffRoader => 0.50,
        SilhouetteKind.Motorcycle => 0.60,
        _ => 0.43,
    };
}
