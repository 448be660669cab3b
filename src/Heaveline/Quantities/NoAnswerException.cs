namespace Heaveline.Quantities;

/// <summary>There is no answer: why, and what to do instead. Whoever only says so to a reader catches this.</summary>
/// <param name="reason">Why there is none, one sentence.</param>
/// <param name="advice">What to do instead, one sentence.</param>
public abstract class NoAnswerException(string reason, string advice) : Exception($"{reason} {advice}")
{
    /// <summary>Why there is none.</summary>
    public string Reason { get; } = reason;

    /// <summary>What to do instead.</summary>
    public string Advice { get; } = advice;
}
