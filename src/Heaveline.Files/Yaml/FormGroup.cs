using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>Fields for the keys of a group, from the shape that reads them.</summary>
internal static partial class FormGroup
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
        var (least, most) = Range(limit);
        return key.Kind.Describe(new FormField
        {
            Path = [.. path, key.Name],
            Meaning = key.Meaning,
            Kind = FieldKind.Text,
            Wanted = key.Kind.Words,
            Example = key.Example,
            IsRequired = key.IsRequired,
            OneOf = [.. shape.OneOf.Where(set => set.Contains(key)).SelectMany(set => set).Select(one => one.Name).Distinct()],
            Limit = limit,
            Least = least,
            Most = most,
        });
    }

    // The limits that records state: "above 0 N/mm", "0 m or above", "between 0.5 and 10 m", "above 0 and at most 2".
    // Only 0 is stated in other units than SI.
    private static (double? Least, double? Most) Range(string? limit)
    {
        if (limit is null)
        {
            return (null, null);
        }

        if (Between().Match(limit) is { Success: true } between)
        {
            return (Number(between.Groups[1]), Number(between.Groups[2]));
        }

        var most = AtMost().Match(limit);
        return (
            limit.StartsWith("above 0", StringComparison.Ordinal) || OrAbove().IsMatch(limit) ? 0.0 : null,
            most.Success ? Number(most.Groups[1]) : null);

        static double Number(Group digits) => double.Parse(digits.ValueSpan, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^between (-?[0-9.eE+-]+) and (-?[0-9.eE+-]+)( |$)")]
    private static partial Regex Between();

    [GeneratedRegex(@"and at most ([0-9.]+)$")]
    private static partial Regex AtMost();

    [GeneratedRegex(@"^0 .*or above$")]
    private static partial Regex OrAbove();
}
