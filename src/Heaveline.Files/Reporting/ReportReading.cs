using Heaveline.Reports;

namespace Heaveline.Files.Reporting;

/// <summary>What came of reading what was asked of a report: the choices, or all the reasons why there are none.</summary>
public sealed record ReportReading
{
    /// <summary>The choices; null when anything is wrong.</summary>
    public required ReportChoices? Choices { get; init; }

    /// <summary>Everything that is wrong, in the order of the report command's options.</summary>
    public required IReadOnlyList<ReportObjection> Objections { get; init; }
}
