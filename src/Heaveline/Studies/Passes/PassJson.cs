using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Passes;

namespace Heaveline.Studies;

/// <summary>A pass for machines: the same wherever it is handed out.</summary>
public static class PassJson
{
    /// <summary>The text.</summary>
    /// <param name="version">Version of the program.</param>
    /// <param name="pass">The pass; of several, the one that the story is of.</param>
    /// <param name="tables">Its numbers, alone or beside those of others; none of a pass that broke off.</param>
    /// <param name="story">What happened.</param>
    /// <param name="more">What else is to be said before the story: settings.</param>
    public static string Of(string version, Pass pass, IEnumerable<FactTable> tables, IEnumerable<string> story, JsonObject? more = null)
    {
        ArgumentNullException.ThrowIfNull(pass);
        var head = new JsonObject
        {
            ["car"] = pass.Model.Car.Name,
            ["load"] = pass.Model.Load.Name,
            ["road"] = pass.Road.Caption,
            ["outcome"] = pass.Outcome.ToString(),
            ["method"] = pass.Statistics.Method,
            ["step"] = pass.Statistics.Step,
            ["steps"] = pass.Statistics.Steps,
        };
        foreach (var (key, value) in more ?? [])
        {
            head[key] = value?.DeepClone();
        }

        head["story"] = TablesJson.Texts(story);
        return TablesJson.Of(version, "pass", tables, head);
    }
}
