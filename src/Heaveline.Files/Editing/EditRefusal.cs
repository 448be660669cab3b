namespace Heaveline.Files.Editing;

/// <summary>Why an edit was not made.</summary>
/// <param name="Problem">The reason by name.</param>
/// <param name="Message">What is wrong, one sentence with its full stop.</param>
/// <param name="Advice">What to do instead.</param>
public sealed record EditRefusal(EditProblem Problem, string Message, string Advice);
