using Heaveline.Answers;

namespace Heaveline.Studies;

/// <summary>What came of reading a question: what is asked, or everything that is wrong with it.</summary>
/// <typeparam name="TAsked">What is asked.</typeparam>
public sealed record AskedReading<TAsked>
    where TAsked : class
{
    /// <summary>What is asked; null when anything is wrong.</summary>
    public required TAsked? Asked { get; init; }

    /// <summary>Everything that is wrong, in the order of reading.</summary>
    public required IReadOnlyList<Objection> Objections { get; init; }

    /// <summary>Tells this question from every other: equal keys have equal answers, also when a file has been changed meanwhile.</summary>
    public required string Key { get; init; }

    /// <summary>The files of all that was found, each once, in the order of reading.</summary>
    public IReadOnlyList<InputText> Inputs { get; init; } = [];

    /// <summary>What is wrong with one choice, in words; null when nothing is.</summary>
    /// <param name="choice">Name of the choice.</param>
    public string? Refused(string choice) => Objections.Where(o => o.Choice == choice).Select(o => o.Sentence).ToList() is { Count: > 0 } sentences
        ? string.Join(' ', sentences)
        : null;
}
