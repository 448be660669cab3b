namespace Heaveline.Measures;

/// <summary>One question to a curve of a pass that is still to run.</summary>
/// <param name="Kind">What is asked.</param>
/// <param name="Signal">What the curve is of.</param>
/// <param name="From">Where the stretch begins, in samples from the first; the share of the peak of a swing; the samples apart of a change.</param>
/// <param name="To">Where the stretch ends; the time after which lobes count, s.</param>
internal sealed record CurveQuestion(CurveQuestionKind Kind, PassSignal Signal, double From = 0.0, double To = 0.0)
{
    /// <summary>Whether another car's question can be answered in the same lanes.</summary>
    public bool IsLike(CurveQuestion other) =>
        Kind == other.Kind && (Kind != CurveQuestionKind.Farthest || From == other.From) && Signal.IsLike(other.Signal);
}
