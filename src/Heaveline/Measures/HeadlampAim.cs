using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>Where the dipped beam's cut-off lies on a level road while the car stands under a load.</summary>
public sealed record HeadlampAim
{
    /// <summary>Height of the lamp above the ground at trim, m.</summary>
    public required double Height { get; init; }

    /// <summary>Drop of the cut-off per distance at trim (–), downwards positive.</summary>
    public required double Drop { get; init; }

    /// <summary>Height of the lamp in the reference state, m.</summary>
    public required double ReferenceHeight { get; init; }

    /// <summary>Drop in the reference state (–).</summary>
    public required double ReferenceDrop { get; init; }

    /// <summary>Distance ahead of the lamp at which the cut-off meets the road, m; null when it never does.</summary>
    public double? MeetsRoad => Drop > 0.0 ? Height / Drop : null;

    /// <summary>Height of the cut-off above the road at a distance ahead of the lamp, m; below 0 it has met the road before.</summary>
    public double CutOffHeight(double distance) => Height - (distance * Drop);

    /// <summary>How much further the nose must rise for the cut-off to reach an eye, rad; below 0 it does so already.</summary>
    /// <param name="distance">Of the eye ahead of the lamp, m.</param>
    /// <param name="eye">Height of the eye, m.</param>
    public double NoseUpToReach(double distance, double eye) => Drop + ((eye - Height) / distance);

    /// <summary>The aim of a car under its load; null without a lamp.</summary>
    public static HeadlampAim? Of(RideModel model)
    {
        if (model.Car.Headlamp is not { } lamp)
        {
            return null;
        }

        return new HeadlampAim
        {
            Height = lamp.Height.Si + model.Trim.FrontHeight - (lamp.AheadOfFrontAxle.Si * model.Trim.Pitch),
            Drop = lamp.Drop.Si + model.Trim.Pitch,
            ReferenceHeight = lamp.Height.Si,
            ReferenceDrop = lamp.Drop.Si,
        };
    }
}
