using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Rules;

/// <summary>
/// The damping ratios that suit pitch, heave and tyre load best on one road at one speed: they differ, so that no damping is best for all.
/// </summary>
public sealed record DampingOptima
{
    /// <summary>The car's own mean damping ratio (–).</summary>
    public required double Own { get; init; }

    /// <summary>Least RMS pitch acceleration; null where nothing was computed.</summary>
    public required BestValue? Pitch { get; init; }

    /// <summary>Least RMS heave acceleration.</summary>
    public required BestValue? Heave { get; init; }

    /// <summary>Least front tyre load variation.</summary>
    public required BestValue? FrontTyre { get; init; }

    /// <summary>Least rear tyre load variation.</summary>
    public required BestValue? RearTyre { get; init; }

    /// <summary>The maps they were read from: pitch, heave, front tyre, rear tyre.</summary>
    public required IReadOnlyList<RuleMap> Maps { get; init; }

    /// <summary>Optima along a list of mean damping ratios.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="road">A long random or measured road says most.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="ratios">Mean damping ratios, rising.</param>
    /// <param name="options">How to run the passes.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DampingOptima Of(
        RideModel model,
        Road road,
        double speed,
        IReadOnlyList<double> ratios,
        PassOptions? options = null,
        int degree = 1,
        CancellationToken cancellation = default)
    {
        var maps = RuleMap.Of(
            model, road, RuleAxis.Damping(ratios), [speed],
            [WholePassCatalogue.RmsPitchAcceleration, WholePassCatalogue.RmsHeaveAcceleration, LoadVariation(0), LoadVariation(2)],
            options,
            degree,
            cancellation: cancellation);
        Measure<Pass> LoadVariation(int corner) => WheelCatalogue.LoadVariation(WheelPlace.Of(corner, model.Rolls));
        return new DampingOptima
        {
            Own = maps[0].Own,
            Pitch = maps[0].Best[0],
            Heave = maps[1].Best[0],
            FrontTyre = maps[2].Best[0],
            RearTyre = maps[3].Best[0],
            Maps = maps,
        };
    }
}
