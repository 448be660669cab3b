using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>Fields for the keys of a group, from the shape that reads them.</summary>
internal static class FormGroup
{
    /// <summary>A whole file as a field without a name, its keys below it.</summary>
    public static FormField Of<T>(Shape<T> file)
        where T : class => new()
        {
            Path = [""],
            Meaning = file.Layout.Meaning,
            Kind = FieldKind.Group,
            Wanted = file.Words,
            IsRequired = true,
            Fields = Fields(file.Layout, file, []),
        };

    /// <summary>The fields of a group's keys.</summary>
    /// <param name="shape">The keys.</param>
    /// <param name="kind">What reads the group, to ask it for its limits.</param>
    /// <param name="path">The keys that lead to the group.</param>
    public static IReadOnlyList<FormField> Fields(Shape shape, Kind kind, IReadOnlyList<string> path) =>
        [.. shape.Keys.Select(key => Field(shape, kind, key, path))];

    private static FormField Field(Shape shape, Kind kind, Key key, IReadOnlyList<string> path)
    {
        var limit = GroupLimits.Of(shape, kind, key);
        return key.Kind.Describe(new FormField
        {
            Path = [.. path, key.Name],
            Meaning = key.Meaning,
            Kind = FieldKind.Text,
            Wanted = key.Kind.Words,
            Example = key.Example,
            IsRequired = key.IsRequired,
            OneOf = [.. shape.OneOf.Where(set => set.Contains(key)).SelectMany(set => set).Select(one => one.Name).Distinct()],
            Limit = limit?.Words,
            Least = limit?.Least,
            Most = limit?.Most,
            UsualLow = key.Usual?.Low,
            UsualHigh = key.Usual?.High,
            IsOpenBelow = limit is { IsOpenBelow: true },
        });
    }
}
