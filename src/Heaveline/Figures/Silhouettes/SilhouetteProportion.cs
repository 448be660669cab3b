namespace Heaveline.Figures.Silhouettes;

/// <summary>
/// The usual sizes of one kind, m, for whatever was not measured. Generic, judged by eye; no outline follows a make or a model.
/// </summary>
/// <param name="Wheelbase">Between the axles.</param>
/// <param name="FrontOverhang">Ahead of the front axle.</param>
/// <param name="RearOverhang">Behind the rear axle.</param>
/// <param name="Height">Of the roof; of the screen's upper edge on an open one.</param>
/// <param name="WheelRadius">Of a wheel with its tyre.</param>
/// <param name="Clearance">Under the sill.</param>
/// <param name="RoofAboveHead">Between the highest ear and the roof.</param>
/// <param name="LampInset">Behind the foremost place of the body.</param>
internal sealed record SilhouetteProportion(
    double Wheelbase,
    double FrontOverhang,
    double RearOverhang,
    double Height,
    double WheelRadius,
    double Clearance,
    double RoofAboveHead,
    double LampInset)
{
    /// <summary>The usual sizes of a kind.</summary>
    public static SilhouetteProportion Of(SilhouetteKind kind) => kind switch
    {
        SilhouetteKind.Hatchback => new(2.30, 0.66, 0.52, 1.48, 0.285, 0.17, 0.20, 0.13),
        SilhouetteKind.Estate => new(2.74, 0.84, 1.00, 1.48, 0.315, 0.18, 0.24, 0.13),
        SilhouetteKind.Van => new(3.40, 0.92, 1.02, 2.42, 0.345, 0.24, 0.74, 0.17),
        SilhouetteKind.PickUp => new(3.10, 0.86, 1.16, 1.78, 0.37, 0.30, 0.26, 0.10),
        SilhouetteKind.OffRoader => new(2.60, 0.62, 0.76, 1.90, 0.385, 0.36, 0.26, 0.06),
        SilhouetteKind.KitCar => new(2.35, 0.52, 0.60, 1.10, 0.29, 0.13, 0.14, 0.16),
        SilhouetteKind.Motorcycle => new(1.45, 0.30, 0.30, 1.12, 0.31, 0.17, 0.0, 0.0),
        _ => new(2.70, 0.84, 1.04, 1.43, 0.31, 0.18, 0.21, 0.13),
    };
}
