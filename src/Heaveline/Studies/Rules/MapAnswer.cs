using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>Everything that is said of one map: the same wherever it is said.</summary>
public sealed record MapAnswer
{
    /// <summary>The map, of one load.</summary>
    public required RuleMap Map { get; init; }

    /// <summary>Where the car stands under each load, the map's own load among them.</summary>
    public required IReadOnlyList<MapLoad> Loads { get; init; }

    /// <summary>Which damping suits what on a rough road; null where the rule is another one.</summary>
    public (DampingOptima Optima, string Road)? Damping { get; init; }

    /// <summary>The closed forms by speed; null where there are none: another rule, the hit, or an end that does not swing.</summary>
    public IReadOnlyList<RatioRule>? Rules => Loads.FirstOrDefault(l => l.Name == Map.Model.Load.Name) is { Ends: { FrontPeriod: not null, RearPeriod: not null } } && Map.JudgesSettling
        ? RatioRule.Of(Map)
        : null;

    /// <summary>The map as a figure, with the lines of all loads; loads that stand at the same place share one.</summary>
    public Figure Figure => RuleMapFigure.Of(
        Map,
        [.. Loads.GroupBy(l => Math.Round(l.Own, 4)).Select(g => (g.Count() == Loads.Count ? "this car" : string.Join(", ", g.Select(l => l.Name)), g.First().Own))],
        Rules is null ? null : RatioForms.Of(Map.Model));

    /// <summary>What it says, in sentences.</summary>
    /// <param name="withOptions">Whether to name the options of the command.</param>
    public IReadOnlyList<string> Sentences(bool withOptions) =>
    [
        .. MapSentences.Rule(Map),
        .. MapSentences.Loads(Map, Loads),
        .. Rules is null ? [] : new[] { MapSentences.ClosedForms(Map) },
        MapSentences.Window(Map, withOptions),
        .. Damping is { } damping ? MapSentences.Optima(damping.Optima, damping.Road) : [],
    ];

    /// <summary>The grid, the loads, and the damping optima where there are any.</summary>
    /// <param name="whole">The whole grid, or as much as a page holds.</param>
    public IReadOnlyList<FactTable> Tables(bool whole) =>
        [MapTable.Grid(Map, Rules, whole), MapTable.Loads(Map, Loads), .. Damping is { } damping ? new[] { MapTable.Optima(damping.Optima) } : []];

    /// <summary>All of it for machines.</summary>
    /// <param name="version">Version of the program.</param>
    public string Json(string version)
    {
        var tally = RuleTally.Of(Map);
        return TablesJson.Of(version, "map", Tables(whole: true), new JsonObject
        {
            ["car"] = Map.Model.Car.Name,
            ["load"] = Map.Model.Load.Name,
            ["road"] = Map.Road.Caption,
            ["rule"] = Map.Axis.Claim,
            ["turned"] = Map.Axis.Name,
            ["against"] = Map.Axis.Against,
            ["measure"] = Map.Measure.Name,
            ["true"] = tally.Holds,
            ["false"] = tally.Fails,
            ["no-difference"] = tally.NoDifference,
            ["not-computed"] = tally.NotComputed,
            ["sentences"] = TablesJson.Texts(Sentences(withOptions: true)),
        });
    }
}
