using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>The words for a variant: a name, the file it changes and the changed keys.</summary>
internal static class VariantWords
{
    /// <summary>Name.</summary>
    public static readonly Key<string> Name = Key.Required("variant", "What the variant is called.", Kind.Text(), "softer front");

    /// <summary>Base file.</summary>
    public static readonly Key<string> Base = Key.Required(
        "of", "The car file, or another variant, that it changes, relative to this file.", Kind.Text(), "fern-estate.yaml");

    /// <summary>Note.</summary>
    public static readonly Key<string> Note = Key.Optional("note", "Why.", Kind.Lines(), "Springs from the parts list.");

    /// <summary>Changes.</summary>
    public static readonly Key<Node> Change = Key.Required(
        "change",
        "The changed keys of the car file, written as they stand there. A key with ~ is taken out; lists are replaced whole.",
        new ChangesKind());

    /// <summary>The whole file.</summary>
    public static readonly Shape<VariantAsWritten> Shape = new Shape(
        "variant file", "A named set of changes to a car file.", Name, Base, Note, Change)
        .As(f => new VariantAsWritten(f.Required(Name), f.Required(Base), f.Optional(Note), f.Required(Change)));

    /// <summary>Whether a document is a variant and not a whole car.</summary>
    public static bool IsVariant(Node root) => root.At(Name.Name) is not null || root.At(Base.Name) is not null || root.At(Change.Name) is not null;
}
