using Heaveline.Files.Cars;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Cars;

/// <summary>A part of the form under one heading.</summary>
/// <param name="Key">Its word in the address.</param>
/// <param name="Heading">In plain words.</param>
/// <param name="Meaning">What it is about.</param>
/// <param name="Entries">The values it begins with: the keys at the top of the file, or one group.</param>
/// <param name="Absent">Keys at the top of the file that may be added.</param>
public sealed record FormSection(string Key, string Heading, string Meaning, IReadOnlyList<FormEntry> Entries, IReadOnlyList<FormField> Absent)
{
    private static readonly Dictionary<string, string> Headings = new()
    {
        ["weighing"] = "On the scales",
        ["body"] = "The body on its springs",
        ["front"] = "The front axle",
        ["rear"] = "The rear axle",
        ["interconnection"] = "What joins front and rear",
        ["brakes"] = "Braking and driving",
        ["seats"] = "The seats",
        ["headlamp"] = "The headlamp",
        ["loads"] = "Who and what is in it",
    };

    /// <summary>The heading of a key at the top of a car file.</summary>
    public static string HeadingOf(string key) => Headings.GetValueOrDefault(key, key);

    /// <summary>How many values in it are refused.</summary>
    public int Refusals => Entries.Sum(entry => entry.Refusals);

    /// <summary>How many look like a slip.</summary>
    public int Slips => Entries.Sum(entry => entry.Slips);

    /// <summary>How many the variant changes.</summary>
    public int Changes => Entries.Sum(entry => entry.Changes);

    /// <summary>How many were not measured on this car.</summary>
    public int Unmeasured => Entries.Sum(entry => entry.Unmeasured);

    /// <summary>
    /// The sections of a draft; of a variant its own head first. Groups that are not there yet have a section only when nothing else is.
    /// </summary>
    /// <param name="draft">The draft.</param>
    /// <param name="remarks">What is said about it.</param>
    public static IReadOnlyList<FormSection> Of(CarDraft draft, IReadOnlyList<Remark> remarks)
    {
        var sections = new List<FormSection>();
        if (draft.IsVariant)
        {
            var (head, absent) = Leaves(CarFile.VariantForm, draft.Own!, []);
            sections.Add(new FormSection("variant", "The variant", "What it is called, which file it changes, and why.", head, absent));
        }

        if (draft.Whole is { } whole)
        {
            string[] own = draft.IsVariant ? ["car", "note"] : [];
            var (car, absent) = Leaves(CarFile.Form, whole, own);
            sections.Add(new FormSection(
                "car", draft.IsVariant ? "The car as a whole" : "The car", "What it is called, what kind it is, and how long.", car, absent));
            sections.AddRange(CarFile.Form.Fields.Where(field => IsPart(field) && whole.At(field.Name) is not null)
                .Select(field => new FormSection(
                    field.Name, HeadingOf(field.Name), field.Meaning, [Entry(field, [field.Name], whole.At(field.Name)!)], [])));
        }

        return sections;

        (IReadOnlyList<FormEntry> Entries, IReadOnlyList<FormField> Absent) Leaves(FormField form, Node node, string[] without)
        {
            var fields = form.Fields.Where(field => !IsPart(field) && !without.Contains(field.Name)).ToList();
            return (
                [.. fields.Where(field => node.At(field.Name) is not null).Select(field => Entry(field, [field.Name], node.At(field.Name)!))],
                [.. fields.Where(field => node.At(field.Name) is null)]);
        }

        FormEntry Entry(FormField field, IReadOnlyList<string> path, Node node)
        {
            var entry = new FormEntry
            {
                Field = field,
                Path = path,
                Node = node,
                Remarks = [.. remarks.Where(remark => remark.Path.SequenceEqual(path)
                    || (field.Kind == FieldKind.Table && remark.Path.Count > path.Count && remark.Path.Take(path.Count).SequenceEqual(path)))],
                From = field.Kind is FieldKind.Group or FieldKind.List or FieldKind.Names ? null : draft.UnmeasuredBy(path),
                IsChanged = draft.IsChangedHere(path),
                Before = draft.IsChangedHere(path) ? CarDraft.At(draft.Base, path) : null,
            };
            if (entry.IsMisshapen)
            {
                return entry;
            }

            return field.Kind switch
            {
                FieldKind.Group => entry with
                {
                    Entries = [.. field.Fields
                        .Where(inner => node.At(inner.Name) is not null).Select(inner => Entry(inner, [.. path, inner.Name], node.At(inner.Name)!))],
                    Absent = [.. field.Fields.Where(inner => node.At(inner.Name) is null && !inner.OneOf.Any(rival => node.At(rival) is not null))],
                },
                FieldKind.Names => entry with { Entries = [.. node.Entries.Select(named => Entry(field.Item!, [.. path, named.Key], named.Value))] },
                FieldKind.List => entry with { Entries = [.. node.Items.Select((item, n) => Entry(field.Item!, [.. path, $"{n + 1}"], item))] },
                _ => entry,
            };
        }
    }

    /// <summary>The groups at the top of a car file that are not there and may be added.</summary>
    public static IReadOnlyList<FormField> Missing(CarDraft draft) =>
        draft.Whole is { } whole ? [.. CarFile.Form.Fields.Where(field => IsPart(field) && whole.At(field.Name) is null)] : [];

    private static bool IsPart(FormField field) => field.Kind is FieldKind.Group or FieldKind.Names or FieldKind.List;
}
