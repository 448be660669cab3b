using System.Text.Json.Nodes;
using Heaveline.Files.Editing;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;
using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>Road files: text in, a road out, or every refusal with its place.</summary>
public static class RoadFile
{
    // Made when first asked for: most commands show no form.
    private static readonly Lazy<FormField> Fields = new(() => FormGroup.Of(RoadWords.Shape));

    /// <summary>The JSON Schema of a road file, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(RoadWords.Shape.Layout);

    /// <summary>Every key of a road file, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(RoadWords.Shape.Layout);

    /// <summary>
    /// The keys of a road file as a form: what each means, how it is entered, its units and limits. From the shapes that read the file.
    /// </summary>
    public static FormField Form => Fields.Value;

    /// <summary>The keys of what a road can be made of: each obstacle, and waves. A file has one of them.</summary>
    public static IReadOnlyList<FormField> Kinds => [.. RoadWords.Drawn.Select(key => Form.At(key)!)];

    /// <summary>
    /// Edits the text of a road file as a person would; every character outside the edited place stays. What the values mean is not looked at:
    /// <see cref="Read"/> says whether they make a road.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="edits">The edits, made one after another, all or none.</param>
    public static EditOutcome Edit(string text, params IEnumerable<KeyEdit> edits) => YamlEditing.Apply(text, _ => RoadWords.Shape, edits);

    /// <summary>Reads a road file (.yaml), or a measured profile by itself (.csv).</summary>
    /// <param name="path">The file.</param>
    /// <param name="garage">The folder that a measured profile must lie in; null: the file's own folder.</param>
    /// <param name="stop">Stops the reading of a long profile.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reading<Road> Load(string path, string? garage = null, CancellationToken stop = default)
    {
        if (FileFormat.MeasuredProfile.Has(path))
        {
            return Measured(path, null, stop);
        }

        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        return refusal is null
            ? Read(source, garage ?? Path.GetDirectoryName(Path.GetFullPath(path)), stop)
            : Reading<Road>.Refused(source, refusal);
    }

    /// <summary>Reads the text of a road file.</summary>
    /// <param name="source">The text under its file's name.</param>
    /// <param name="garage">The folder that a measured profile must lie in; null: a measured road is refused.</param>
    /// <param name="stop">Stops the reading of a long profile.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reading<Road> Read(SourceText source, string? garage = null, CancellationToken stop = default)
    {
        var reading = YamlReading.Read(source, RoadWords.Shape);
        var result = new Reading<Road>
        {
            Value = reading.Value?.Drawn, Refusals = reading.Refusals, Warnings = reading.Warnings, Sources = reading.Sources, Root = reading.Root,
        };
        if (result.Root?.At("car") is { Place: var car } && result.Root.At("road") is null)
        {
            const string said = "this is a car file: it names a car and no road.";
            return result with
            {
                Refusals = [new Refusal(source.File, car.Line, car.Column, car.Length, said, "Give it as the car, and a road file as the road.")],
            };
        }

        if (reading.Value is not { Profile: { } profile, Name: var name })
        {
            return result;
        }

        var at = reading.Root!.At(RoadWords.Profile.Name)!.Place;
        Reading<Road> Refuse(string problem, string advice) =>
            result with { Refusals = [new Refusal(source.File, at.Line, at.Column, at.Length, $"profile is {profile}, which {problem}.", advice)] };
        if (garage is null)
        {
            return Refuse("is looked for beside this text, and it lies in no folder", "Save it beside the profile.");
        }

        var (path, problem) = Confined.Resolve(garage, source.File, profile);
        if (problem is not null)
        {
            return Refuse(problem, "Name a file in the same folder, or give a wider folder as the garage.");
        }

        if (!File.Exists(path))
        {
            return Refuse("is not there", "Check the name and the folder.");
        }

        var measured = Measured(Path.Combine(Path.GetDirectoryName(source.File) ?? "", profile.Replace('\\', '/')), name, stop);
        if (reading.Value.Obstacle is { } obstacle && measured.Value is { } road)
        {
            if (!(obstacle.From >= 0.0 && obstacle.To > obstacle.From && obstacle.To <= road.End))
            {
                at = reading.Root.At(RoadWords.Obstacle.Name)!.Place;
                var said = FormattableString.Invariant($"obstacle lies from {obstacle.From:0.###} to {obstacle.To:0.###} m; ")
                    + FormattableString.Invariant(
                        $"it must begin at 0 m or after, end after its beginning, and at {road.End:0.###} m at the latest.");
                return result with
                {
                    Refusals = [new Refusal(source.File, at.Line, at.Column, at.Length, said, "Give both from the first point of the profile on.")],
                };
            }

            measured = measured with { Value = road with { Event = new RoadEvent(obstacle.From, obstacle.To) } };
        }

        return measured with { Sources = [source, .. measured.Sources] };
    }

    private static Reading<Road> Measured(string path, string? name, CancellationToken stop)
    {
        var (source, refusal) = SourceText.Load(path, FileFormat.MeasuredProfile.MostBytes);
        return refusal is null ? MeasuredProfileFile.Read(source, name, stop) : Reading<Road>.Refused(source, refusal);
    }
}
