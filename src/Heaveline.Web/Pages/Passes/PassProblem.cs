namespace Heaveline.Web.Pages.Passes;

/// <summary>Why a state of the page shows nothing, or not what was asked.</summary>
/// <param name="Heading">What is wrong, in one line.</param>
/// <param name="Advice">What to do.</param>
/// <param name="Details">What was refused in a file, line by line; empty when it is only a name.</param>
public sealed record PassProblem(string Heading, string Advice, string Details);
