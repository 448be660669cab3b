namespace Heaveline.Passes;

/// <summary>How a pass was computed and how far it may be off.</summary>
public sealed record PassStatistics
{
    /// <summary>The method in words.</summary>
    public required string Method { get; init; }

    /// <summary>Step, s; the mean piece of an exact run.</summary>
    public required double Step { get; init; }

    /// <summary>Number of steps or pieces.</summary>
    public required long Steps { get; init; }

    /// <summary>
    /// What the error of the pitch angle lies below, over its peak (–): three times a third of the largest difference to a run with twice the step,
    /// since corners in the force laws make the error fall with the square of the step, or four thirds of that to one with half the step where twice
    /// would not be stable; all of it, or twice, where a force jumps. At a sharp step of the road under an undamped tyre twice the largest difference
    /// to a run with twice and to one with half the step. Null when not asked for or not to be had.
    /// </summary>
    public double? PitchError { get; init; }

    /// <summary>Estimated error of the tyre load's change over its peak (–), likewise.</summary>
    public double? TyreLoadError { get; init; }
}
