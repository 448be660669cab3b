using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Reports;

/// <summary>All cars over the road side by side.</summary>
internal static class ComparePart
{
    public static ReportPart Of(ReportWork work) => new()
    {
        Heading = "Side by side",
        Blocks = work.Several ? [.. Blocks(work)] : [Paragraph.Of("One car alone has nothing to be held against.")],
        Sources = work.Several ? [Sources.Axes, Sources.Steps, Sources.Parts] : [],
    };

    private static IEnumerable<Block> Blocks(ReportWork work)
    {
        var (names, passes) = (work.Names, work.Passes);
        yield return Paragraph.Of($"All drive {Drive(work)}. The first, {names[0]}, is what the others are held against. The hit and the settling are two things: what shortens the settling may leave the hit as it is.");
        if (passes.FirstOrDefault(p => p.Pass.Outcome != PassOutcome.Completed).Pass is { } broken)
        {
            yield return Caution.Of($"{broken.Model.Car.Name} did not get across: {broken.OutcomeSentence}");
        }
        else
        {
            yield return Illustration.Of(CompareFigure.Of([.. names.Select((name, i) => (name, passes[i].Pass, passes[i].Measures))]));
            yield return PassPart.Measures(names, passes, $"Measures {work.Drive}");
            yield return Paragraph.Of(PassPart.Computed([.. passes.Select(p => p.Pass)]));
        }

        if (work.Choices.Speeds.Length > 1)
        {
            yield return Illustration.Of(CompareSpeedsFigure.Of(OverSpeeds(work)));
        }
    }

    private static IReadOnlyList<(string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)> OverSpeeds(ReportWork work)
    {
        var bySpeed = work.Choices.Speeds.Select(work.At).ToList();
        return [.. work.Names.Select((name, i) => (name, (IReadOnlyList<(Pass, PassMeasures)>)[.. bySpeed.Select(passes => passes[i])]))];
    }

    private static string Drive(ReportWork work)
    {
        string[] loads = [.. work.Models.Select(m => m.Load.Name).Distinct()];
        return $"{work.Drive}, {string.Join(" and ", loads)}";
    }
}
