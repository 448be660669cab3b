namespace Heaveline.Web.Pages.Passes;

/// <summary>A name or a file that a state of the page needs and does not get: the page says so and offers its choices.</summary>
internal sealed class PassProblemException(string what, string message, string advice) : Exception(message)
{
    /// <summary>Which choice it is about: "car", "load" or "road".</summary>
    public string What { get; } = what;

    /// <summary>What to do.</summary>
    public string Advice { get; } = advice;

    /// <summary>What was refused in a file, line by line; empty when it is only a name.</summary>
    public string Details { get; init; } = "";
}
