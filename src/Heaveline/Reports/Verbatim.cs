using Heaveline.Answers;

namespace Heaveline.Reports;

/// <summary>A text as it was given, letter by letter, with its name and its digest.</summary>
public sealed record Verbatim : Block
{
    /// <summary>The text that the report was computed from.</summary>
    public required ReportInput Input { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }
}
