namespace Heaveline.Studies;

/// <summary>Why a question cannot be answered as it was asked.</summary>
/// <param name="Choice">Name of the choice that it is about; blank where it is about no single one.</param>
/// <param name="Sentence">What is wrong and what there is instead.</param>
/// <param name="IsUsage">Whether it is the words that are wrong, whatever cars and roads say.</param>
public sealed record Objection(string Choice, string Sentence, bool IsUsage)
{
    /// <summary>The one reading of the choice that it is about; null where it is about no single one.</summary>
    public ReadingPlace? Place { get; init; }

    /// <summary>Where the words stand in the file of a study; null where they were given otherwise.</summary>
    public (string File, ChooseLine Line)? Written { get; init; }

    /// <summary>What is wrong, with its place in front where it stands in a file.</summary>
    public string Placed => Written is { } written
        ? FormattableString.Invariant($"{written.File}:{written.Line.Line}:{written.Line.Column}: {Sentence}")
        : Sentence;

    /// <summary>Whether there is no car or road of the name at all.</summary>
    public bool IsMissing { get; init; }
}
