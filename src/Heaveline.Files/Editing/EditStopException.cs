namespace Heaveline.Files.Editing;

/// <summary>Ends an edit from any depth; never leaves <see cref="YamlEditing"/>.</summary>
internal sealed class EditStopException(EditProblem problem, string message, string advice) : Exception(message)
{
    /// <summary>The reason, as it is handed out.</summary>
    public EditRefusal Refusal { get; } = new(problem, message, advice);
}
