namespace Heaveline.Studies;

/// <summary>
/// A question as it is offered: its word, what it is about, what can be chosen. A command takes its options and its help from here, a page its
/// address.
/// </summary>
public abstract record Question
{
    /// <summary>The word of the command, and of the answer for machines.</summary>
    public required string Word { get; init; }

    /// <summary>What is answered, with examples of the command.</summary>
    public required string Says { get; init; }

    /// <summary>What can be chosen at a command line, in the order of its help.</summary>
    public required IReadOnlyList<Choice> Choices { get; init; }

    /// <summary>Which of its figures a command draws, a word for each; null where there is one only, or none.</summary>
    public Choice? Draws { get; init; }

    /// <summary>Whether its printout leaves numbers out unless all are asked for.</summary>
    public bool IsShortened { get; init; }

    /// <summary>Whether it has a figure.</summary>
    public bool HasFigure { get; init; } = true;

    /// <summary>The option of a command by which its CSV is written, without the dashes.</summary>
    public string CsvOption { get; init; } = "csv";

    /// <summary>How the name of that file ends.</summary>
    public string CsvEnding { get; init; } = ".csv";

    /// <summary>What a command writes as CSV, as its help says it; null for nothing.</summary>
    public string? CsvSays { get; init; }

    /// <summary>Other files of its answer that a command writes where they are asked for.</summary>
    public IReadOnlyList<FileChoice> Writes { get; init; } = [];

    /// <summary>The choices that speak of the CSV alone: without it they are objected to.</summary>
    public IReadOnlyList<Choice> OfCsv { get; init; } = [];

    /// <summary>Word of the command that it stands under, and of the answer for machines; null: it is a command of its own.</summary>
    public string? Group { get; init; }
}
