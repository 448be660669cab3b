using Heaveline.Answers;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>All cars over the road side by side.</summary>
internal static class ComparePart
{
    public static ReportPart Of(ReportWork work) => work.Several
        ? Compared(work)
        : new ReportPart { Heading = Heading, Blocks = [Paragraph.Of("One car alone has nothing to be held against.")] };

    private const string Heading = "Side by side";

    private static ReportPart Compared(ReportWork work)
    {
        var answer = CompareStudy.Run(new CompareAsked { Cars = work.Cars, Road = work.Choices.Road, Speeds = [work.Choices.Speed] }, work.Run);
        return new ReportPart { Heading = Heading, Blocks = [.. Blocks(work, answer)], Sources = [.. answer.Sources] };
    }

    private static IEnumerable<Block> Blocks(ReportWork work, CompareAnswer answer)
    {
        var (passes, loads) = (answer.Passes[0], work.Cars.Select(c => c.Load.Name).Distinct());
        yield return Paragraph.Of(
            $"All drive {work.Drive}, {string.Join(" and ", loads)}. The first, {answer.Names[0]}, is what the others are held against. "
            + "The hit and the settling are two things: what shortens the settling may leave the hit as it is.");
        if (passes.FirstOrDefault(p => !p.IsWhole) is { } broken)
        {
            yield return Caution.Of($"{broken.Name} did not get across: {broken.Pass.OutcomeSentence}");
        }
        else
        {
            yield return Illustration.Of(answer.Figure(CompareAnswer.Traces));
            yield return PassPart.Measures(answer.ShortTables[0], $"Measures {work.Drive}");
            yield return Paragraph.Of(PassPart.Computed(passes));
        }

        if (work.Choices.Speeds.Length > 1)
        {
            yield return Illustration.Of(CompareStudy.Run(answer.Asked with { Speeds = work.Choices.Speeds }, work.Run)
                .Figure(CompareAnswer.OverSpeeds));
        }
    }
}
