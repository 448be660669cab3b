using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Cars;

/// <summary>
/// What stands under a key that has just been added: as little as its group needs, and every number still empty. An empty number is refused until it
/// is filled in, so that nothing gets into a file that nobody has measured.
/// </summary>
internal static class BlankValue
{
    /// <summary>The value to begin with.</summary>
    public static Node Of(FormField field) => field.Kind switch
    {
        FieldKind.Group => Node.Group(Needed(field).Select(inner => KeyValuePair.Create(inner.Name, Of(inner)))),
        FieldKind.Table => Node.List(Row(field)),
        FieldKind.List => Node.List(Of(field.Item!)),
        FieldKind.Names => Node.Group(KeyValuePair.Create(field.Name is "seats" ? "driver" : "loaded", Of(field.Item!))),
        FieldKind.Word => Node.Scalar(field.Words[0]),
        FieldKind.YesNo => Node.Scalar("true"),
        _ => Node.Scalar(""),
    };

    /// <summary>An empty row of a table.</summary>
    public static Node Row(FormField table) => Node.List(table.Columns.Select(_ => Node.Scalar("")));

    // Keys that must be there, the first of each set of which one must be, or at least one.
    private static IEnumerable<FormField> Needed(FormField group)
    {
        var needed = group.Fields.Where(field => field.IsRequired || (field.OneOf.Count > 0 && field.OneOf[0] == field.Name)).ToList();
        return needed.Count > 0 ? needed : group.Fields.Take(1);
    }
}
