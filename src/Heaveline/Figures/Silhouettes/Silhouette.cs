using System.Collections.Immutable;
using Heaveline.Cars;

namespace Heaveline.Figures.Silhouettes;

/// <summary>
/// A vehicle from its side in the state described, as numbers: m, x forward from the rear axle, z up from the ground. Generic shapes of our own,
/// stretched over what was measured; no outline follows a make or a model.
/// </summary>
internal sealed record Silhouette
{
    /// <summary>What it is.</summary>
    public required SilhouetteKind Kind { get; init; }

    /// <summary>What it was drawn from.</summary>
    public required SilhouetteMeasures Measures { get; init; }

    /// <summary>The body's outline, closed, with its wheel arches cut in.</summary>
    public required SilhouettePath Outline { get; init; }

    /// <summary>Panes, each closed.</summary>
    public required ImmutableArray<SilhouettePath> Glass { get; init; }

    /// <summary>Doors' edges and folds of the sheet.</summary>
    public required ImmutableArray<SilhouettePath> Creases { get; init; }

    /// <summary>Parts beyond the outline: a spare wheel, a head rest, a fairing; each closed.</summary>
    public required ImmutableArray<SilhouettePath> Panels { get; init; }

    /// <summary>The tail lamp.</summary>
    public required ScenePoint Tail { get; init; }

    /// <summary>Foremost place, at the height of its bumper.</summary>
    public required ScenePoint Nose { get; init; }

    /// <summary>Rearmost place, at the height of its lid.</summary>
    public required ScenePoint Rump { get; init; }

    /// <summary>Upper end of the front springs and dampers in the body.</summary>
    public required ScenePoint FrontTower { get; init; }

    /// <summary>Upper end of the rear springs and dampers in the body.</summary>
    public required ScenePoint RearTower { get; init; }

    /// <summary>Radius of the wheel arches, m; 0 without.</summary>
    public required double ArchRadius { get; init; }

    /// <summary>Whether people sit in the open.</summary>
    public bool IsOpen => Kind is SilhouetteKind.KitCar or SilhouetteKind.Motorcycle;

    /// <summary>The dipped lamp.</summary>
    public ScenePoint Lamp => Measures.Lamp;

    /// <summary>Where a two-wheeler's swinging arm turns; null on a car.</summary>
    public ScenePoint? Pivot { get; init; }

    /// <summary>The silhouette of a vehicle.</summary>
    public static Silhouette Of(Car car)
    {
        var kind = SilhouetteChoice.Of(car).Kind;
        return Of(kind, SilhouetteMeasures.Of(car, kind));
    }

    /// <summary>A kind's silhouette stretched over measures.</summary>
    public static Silhouette Of(SilhouetteKind kind, SilhouetteMeasures measures) => kind switch
    {
        SilhouetteKind.Hatchback => HatchbackShape.Of(measures),
        SilhouetteKind.Estate => EstateShape.Of(measures),
        SilhouetteKind.Van => VanShape.Of(measures),
        SilhouetteKind.PickUp => PickUpShape.Of(measures),
        SilhouetteKind.OffRoader => OffRoaderShape.Of(measures),
        SilhouetteKind.KitCar => KitCarShape.Of(measures),
        SilhouetteKind.Motorcycle => MotorcycleShape.Of(measures),
        _ => SaloonShape.Of(measures),
    };
}
