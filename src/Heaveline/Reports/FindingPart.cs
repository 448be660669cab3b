using Heaveline.Answers;

namespace Heaveline.Reports;

/// <summary>The finding before the numbers.</summary>
internal static class FindingPart
{
    public static ReportPart Of(ReportWork work) => new()
    {
        Heading = "In short",
        Blocks = [Points.Of(Finding.Of(work).Select(s => s.Text))],
        Sources = [.. work.Passes[0].Sources.Union(work.Why?.Sources ?? []).Union(work.Asked(PartKind.Prove) ? work.Proof.Sources : [])
            .Union(work.Asked(PartKind.Choose) ? work.Choice.Sources : [])],
    };
}
