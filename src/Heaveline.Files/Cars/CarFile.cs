using System.Text.Json.Nodes;
using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>Car files and variants: text in, a car out, or every refusal with its place.</summary>
public static class CarFile
{
    private const string Blanks =
        """
        # A car of your own. Put what you measured where it says "fill in", each value with its unit and, if you know it, its doubt: 742 kg ± 2 kg.
        # A line that begins with # is left out until you take its # away; its value is an example, not yours.
        # Springs store energy, and a car on a jack kills: use stands and chocks. To be told what is missing or doubtful: heaveline check FILE

        """;

    /// <summary>What a file to be filled in holds where a value must be put.</summary>
    public const string Blank = FileTemplate.Blank;

    // Made when first asked for: it takes a moment, and most commands show no form.
    private static readonly Lazy<FormField> CarFields = new(() => FormGroup.Of(CarWords.Shape));
    private static readonly Lazy<FormField> VariantFields = new(() => FormGroup.Of(VariantWords.Shape));

    /// <summary>The JSON Schema of a car file, for editors.</summary>
    public static JsonObject Schema => JsonSchema.Of(CarWords.Shape.Layout);

    /// <summary>The JSON Schema of a variant.</summary>
    public static JsonObject VariantSchema => JsonSchema.Of(VariantWords.Shape.Layout);

    /// <summary>Every key of a car file and of a variant, group by group, as a page in Markdown.</summary>
    public static string KeyPage => Yaml.KeyPage.Of(CarWords.Shape.Layout, VariantWords.Shape.Layout);

    /// <summary>
    /// A car file to be filled in: each key that must be there as a line to complete, all the others as comments with an example. It is refused, with
    /// every blank named, until it is filled in.
    /// </summary>
    /// <param name="name">What the vehicle is called.</param>
    public static string Template(string name)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        return Blanks + FileTemplate.Of(
            CarWords.Shape.Layout,
            new Dictionary<string, string>(StringComparer.Ordinal) { ["car"] = ScalarText.Of(name, inFlow: false) },
            new HashSet<string>(StringComparer.Ordinal) { "track", "moves", "rebound" },
            key => key == "seats" ? "driver" : "driver alone");
    }

    /// <summary>
    /// The keys of a car file as a form: what each means, how it is entered, its units and limits. From the shapes that read the file.
    /// </summary>
    public static FormField Form => CarFields.Value;

    /// <summary>The keys of a variant as a form; the keys of the car file stand under <c>change</c>.</summary>
    public static FormField VariantForm => VariantFields.Value;

    /// <summary>
    /// Edits the text of a car file or a variant as a person would: new keys go where the documentation lists them, indented as the file is, and
    /// every character outside the edited place stays. The result is read back before it is handed out. What the values mean is not looked at:
    /// <see cref="Read"/> says whether they make a car.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="edits">The edits, made one after another, all or none.</param>
    public static EditOutcome Edit(string text, params IEnumerable<KeyEdit> edits) =>
        YamlEditing.Apply(text, root => VariantWords.IsVariant(root) ? VariantWords.Shape : CarWords.Shape, edits);

    /// <summary>Reads a car file, or a variant with its bases.</summary>
    /// <param name="path">The file.</param>
    /// <param name="garage">The folder that a variant's bases must lie in; null: the file's own folder.</param>
    public static Reading<Car> Load(string path, string? garage = null)
    {
        var (source, refusal) = SourceText.Load(path, YamlTree.Longest);
        return refusal is null
            ? Read(source, garage ?? Path.GetDirectoryName(Path.GetFullPath(path)))
            : Reading<Car>.Refused(source, refusal);
    }

    /// <summary>Reads the text of a car file. A variant needs <see cref="Load"/>, or a folder, to find its base.</summary>
    /// <param name="source">The text under its file's name.</param>
    /// <param name="garage">The folder that a variant's bases must lie in; null: a variant is refused.</param>
    public static Reading<Car> Read(SourceText source, string? garage = null)
    {
        var chain = new VariantChain(source, garage);
        var root = chain.Put();
        var reader = chain.Reader;
        if (root is null)
        {
            return Result(null);
        }

        if (root.At("road") is { } road && root.At("car") is null && !VariantWords.IsVariant(root))
        {
            reader.Refuse(road.Place, "this is a road file: it names a road and no car.", "Give it as the road, and a car file as the car.");
            return Result(null);
        }

        var isRead = CarWords.Shape.TryRead(root, reader, out var car);
        if (root.Kind == NodeKind.Mapping)
        {
            CarStructure.Check(root, reader);
        }

        if (isRead && reader.Count == 0)
        {
            reader.RefuseImpossible();
        }

        if (!isRead || reader.Count > 0 || CarStanding.Check(car!, root, reader) is not { } standing)
        {
            return Result(null);
        }

        if (!StepSlips.Check(standing, root, reader))
        {
            return Result(null);
        }

        CarSlips.Check(standing, root, reader);
        return Result(chain.Names is { Length: > 0 } names ? car! with { Name = $"{car.Name}, {names}", Note = chain.Note ?? car.Note } : car);

        Reading<Car> Result(Car? result) => new()
        {
            Value = result,
            Refusals = reader.Refusals,
            Warnings = reader.Warnings,
            Sources = chain.Sources,
            Root = root,
        };
    }
}
