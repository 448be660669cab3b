using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Rules;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>A rule of the trade as a map over speed, for the first car.</summary>
internal static class RulePart
{
    public static ReportPart Of(ReportWork work)
    {
        var model = work.Models[0];
        var road = work.Choices.Road;
        var axis = work.Choices.Rule(model);
        var heading = $"The rule: is it true that {char.ToLowerInvariant(axis.Claim[0])}{axis.Claim[1..].TrimEnd('.')}?";
        if (road.Event is null)
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of($"{road.Caption} has no single bump, so that hit and settling cannot be told apart and the rule cannot be judged on it.")] };
        }

        var map = RuleMap.Of(model, road, axis, work.Choices.RuleSpeeds, [SettlingCatalogue.RmsPitch], degree: work.Choices.Degree, cancellation: work.Cancellation)[0];
        if (map.Best.All(b => b is null))
        {
            return new ReportPart { Heading = heading, Blocks = [Paragraph.Of($"No place of this map could be computed: {map.Refusals.FirstOrDefault(r => r.Length > 0) ?? "every pass left the model's range."}")] };
        }

        // The closed forms speak of the frequency ratio alone.
        var isRatio = axis.Key == "ratio";
        var rules = isRatio ? RatioRule.Of(map) : null;
        var own = MapLoad.Of(map, isRatio);
        return new ReportPart
        {
            Heading = heading,
            Blocks =
            [
                Paragraph.Of(MapSentences.Head(map).ReplaceLineEndings(" ")),
                Illustration.Of(RuleMapFigure.Of(map, [(model.Load.Name, map.Own)], isRatio ? RatioForms.Of(model) : null)),
                Points.Of(
                [
                    .. MapSentences.Rule(map),
                    .. MapSentences.Loads(map, [own]),
                    .. isRatio ? [MapSentences.ClosedForms(map)] : Array.Empty<string>(),
                    "This judges the settling alone: the hit, until the rear wheels have left, is not in it.",
                ]),
                Tabulated.Of(MapTable.Grid(map, rules, whole: false), $"The measure over that of {map.Axis.Against}, by speed and {map.Axis.ShortName}"),
            ],
            Sources = [Sources.Steps, Sources.Parts, .. isRatio ? [Sources.Rule] : Array.Empty<Source>()],
        };
    }
}
