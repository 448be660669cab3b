namespace Heaveline.Passes;

/// <summary>A run that could not be finished: what happened and when, and what to do instead.</summary>
public sealed class RunFailedException : InvalidOperationException
{
    /// <summary>Makes the failure.</summary>
    /// <param name="reason">What happened and at what time, one sentence.</param>
    /// <param name="advice">What to do, one sentence.</param>
    public RunFailedException(string reason, string advice)
        : base($"{reason} {advice}")
    {
        Reason = reason;
        Advice = advice;
    }

    /// <summary>What happened and at what time.</summary>
    public string Reason { get; }

    /// <summary>What to do.</summary>
    public string Advice { get; }
}
