using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Cars;

/// <summary>Finds for each refusal and warning of a draft the field that it belongs to, by its place in the text.</summary>
internal static class Remarks
{
    /// <summary>All of them: refusals first, each in the order of the text.</summary>
    public static IReadOnlyList<Remark> Of(CarDraft draft, string folder)
    {
        var places = new List<(IReadOnlyList<string> Path, Place Place)>();
        if (draft.Whole is { } whole)
        {
            Gather(whole, []);
        }

        foreach (var entry in draft.IsVariant && draft.Own is { } own ? own.Entries.Where(entry => entry.Key != "change") : [])
        {
            places.Add(([entry.Key], entry.Value.Place));
            places.Add(([entry.Key], entry.KeyPlace));
        }

        return
        [
            .. draft.Reading.Refusals
                .Select(r => new Remark(true, r.Message, r.Advice, r.File, r.Line, Field(r.File, new Place(r.Line, r.Column, r.Length)))),
            .. draft.Reading.Warnings
                .Select(w => new Remark(false, w.Message, w.Advice, w.File, w.Line, Field(w.File, new Place(w.Line, w.Column, w.Length)))),
        ];

        void Gather(Node node, IReadOnlyList<string> path)
        {
            places.Add((path, node.Place));
            foreach (var entry in node.Entries)
            {
                places.Add(([.. path, entry.Key], entry.KeyPlace));
                Gather(entry.Value, [.. path, entry.Key]);
            }

            for (var n = 0; n < node.Items.Count; n++)
            {
                Gather(node.Items[n], [.. path, $"{n + 1}"]);
            }
        }

        // The value marked; or the innermost one that the mark lies in; or the first one that begins on the line.
        IReadOnlyList<string> Field(string file, Place at)
        {
            var here = places.Where(one => NameOf(one.Place) == file && one.Place.Line == at.Line).ToList();
            var found = here
                .Where(one => one.Place.Column == at.Column && one.Place.Length == at.Length).Select(one => one.Path).MaxBy(path => path.Count)
                ?? here.Where(one => one.Place.Column <= at.Column && at.Column < one.Place.Column + one.Place.Length)
                    .Select(one => one.Path).MaxBy(path => path.Count)
                ?? [];
            while (found.Count > 0 && !IsField(found))
            {
                found = [.. found.SkipLast(1)];
            }

            return found;
        }

        bool IsField(IReadOnlyList<string> path) =>
            draft.IsVariant && path.Count == 1 && CarFile.VariantForm.At([.. path]) is { Kind: not FieldKind.Group }
            || CarFile.Form.At([.. path]) is not null;

        string NameOf(Place place) =>
            place.File is null ? draft.File : Path.GetRelativePath(folder, place.File).Replace(Path.DirectorySeparatorChar, '/');
    }
}
