using Heaveline.Numerics;

namespace Heaveline.Elements;

/// <summary>
/// Dry friction: a spring in series with a slider that gives way. The one thing in a car that remembers the way here; standing still it is taken at
/// the middle of its band, without force.
/// </summary>
/// <param name="Force">Where the slider gives way, N.</param>
/// <param name="PreSliding">Travel over which the force rises to it, m.</param>
/// <param name="SpeedScale">Speed at which 71 % of it acts in a random ride made straight, m/s.</param>
internal sealed record Slider(double Force, double PreSliding, double SpeedScale)
{
    // A wheel at this speed, m/s, passes no more than the pre-sliding travel in a step; and the step, s, that is short enough for all. Our choice,
    // by the errors that Heaveline.Bench measured (steps, 27 November 2026): in steps of 0.625 ms the worst of its cars is as far off in pitch with
    // up to 150 N that rises over 0.05 mm as without any, with 300 N at most twice as far: 1.3e-4 of the peak.
    private const double FastestTurn = 0.08;
    private const double ShortestStep = 1e-4;

    /// <summary>What it is in words where only straight pieces will do.</summary>
    public const string Words = "friction";

    /// <summary>Rate before it slides, N/m.</summary>
    public double Rate => Force / PreSliding;

    /// <summary>The longest step by which it can be followed, s.</summary>
    public double LongestStep => Math.Max(PreSliding / FastestTurn, ShortestStep);

    /// <summary>E[∂F/∂ṡ] of F·ṡ/√(ṡ² + v_s²) over a normal speed of mean 0.</summary>
    /// <param name="speed">Deviation of the speed, m/s.</param>
    public double MeanDamping(double speed) => Force * Gaussian.SmoothSign(speed, SpeedScale);
}
