namespace Heaveline.Files.Reporting;

/// <summary>Why a report cannot be made as it was asked for.</summary>
/// <param name="Choice">Which choice it is about: its option of the report command without the dashes ("speed"); "car" for the cars.</param>
/// <param name="Sentence">What is wrong and what there is instead.</param>
/// <param name="IsUsage">Whether it is the words that are wrong, whatever the files say.</param>
public sealed record ReportObjection(string Choice, string Sentence, bool IsUsage);
