using CsCheck;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public class VariantFileTests
{
    private static readonly string Folder = Path.Combine(Checkout.Root, "examples", "garage");

    [Fact]
    public void A_variant_is_written_as_a_person_would_write_it()
    {
        var root = CarFile.Load(Path.Combine(Folder, "fern-saloon.yaml")).Root!;
        var outcome = VariantFile.Write(
            "softer front",
            "fern-saloon.yaml",
            root,
            [
                KeyEdit.Put(["front", "spring", "rate"], "18.5 N/mm ± 4 %"),
                KeyEdit.Put(["rear", "spring", "wheel-rate"], "20 N/mm"),
                KeyEdit.Remove(["rear", "spring", "rate"]),
                KeyEdit.Remove(["rear", "spring", "moves"]),
                KeyEdit.Put(["rear", "damper", "bump", "1", "2"], "140 N"),
                KeyEdit.Append(
                    ["loads", "driver"],
                    Node.Group([new("what", Node.Scalar("dog: big")), new("mass", Node.Scalar("40 kg")), new("in", Node.Scalar("rear left"))])),
                KeyEdit.Put(["kind"], "car"),
            ],
            "Springs from the parts list.");
        Assert.Equal(
            """
            variant: softer front
            of: fern-saloon.yaml
            note: Springs from the parts list.
            change:
              front:
                spring:
                  rate: 18.5 N/mm ± 4 %
              rear:
                spring:
                  wheel-rate: 20 N/mm
                  moves: ~
                damper:
                  bump: [[0.1 m/s, 140 N], [0.3 m/s, 300 N], [0.6 m/s, 500 N], [1.0 m/s, 720 N]]
              loads:
                driver:
                  - {what: driver, mass: 75 kg, in: driver}
                  - {what: "dog: big", mass: 40 kg, in: rear left}

            """,
            outcome.Text);
    }

    [Fact]
    public void Any_changes_of_an_example_kept_as_a_variant_give_the_changed_car()
    {
        var files = Directory.EnumerateFiles(Folder, "*.yaml").Order(StringComparer.Ordinal).ToArray();
        Gen.Select(Gen.Int[0, files.Length - 1], Gen.Select(Gen.Int[0, 3], Gen.Int[0, 500]).Array[1, 6]).Sample(
            (which, steps) =>
            {
                var root = CarFile.Load(files[which]).Root!;
                var after = root;
                foreach (var (what, where) in steps)
                {
                    var places = Paths(after, []).ToList();
                    var (path, node) = places[where % places.Count];
                    var edit = what switch
                    {
                        0 when path.Length > 1 => KeyEdit.Remove(path),
                        1 when node.Kind == NodeKind.Mapping =>
                            KeyEdit.Put([.. path, "new"], Node.Group([new("a", Node.Scalar("1")), new("b", Node.List(Node.Scalar("c")))])),
                        _ when node.Kind == NodeKind.Scalar => KeyEdit.Put(path, node.Text + " changed: so"),
                        _ => KeyEdit.Remove(path),
                    };
                    after = TreeEditing.Apply(after, edit, CarWords.Shape);
                }

                var outcome = VariantFile.Write("v", Path.GetFileName(files[which]), root, after);
                if (outcome.Refusal is { } refusal)
                {
                    Assert.True(refusal.Problem == EditProblem.NothingChanged && after.IsSameAs(root), refusal.Message);
                    return;
                }

                var read = CarFile.Read(new SourceText(Path.Combine(Folder, "new-variant.yaml"), outcome.Text!), Folder);
                Assert.True(read.Root!.IsSameAs(after), outcome.Text);
            },
            iter: 200);
    }

    [Fact]
    public void A_kept_variant_is_the_car_of_the_edited_file()
    {
        var text = File.ReadAllText(Path.Combine(Folder, "fern-saloon.yaml"));
        var edit = KeyEdit.Put(["rear", "spring", "rate"], "48 N/mm ± 4 %");
        var edited = CarFile.Read(new SourceText("edited.yaml", CarFile.Edit(text, edit).Text!));
        var variant = VariantFile.Write("stiff", "fern-saloon.yaml", CarFile.Load(Path.Combine(Folder, "fern-saloon.yaml")).Root!, edited.Root!);
        var kept = CarFile.Read(new SourceText(Path.Combine(Folder, "stiff.yaml"), variant.Text!), Folder);
        Assert.Equal("", kept.Format());
        Assert.Equal("Fern saloon, stiff", kept.Value!.Name);
        Assert.Equal(edited.Value!.Rear.Spring, kept.Value.Rear.Spring);
        Assert.Equal(edited.Value.Front.Spring, kept.Value.Front.Spring);
        Assert.Equal(edited.Value.Body, kept.Value.Body);
    }

    [Fact]
    public void What_makes_no_variant_is_refused_by_name()
    {
        var root = CarFile.Load(Path.Combine(Folder, "fern-saloon.yaml")).Root!;
        Assert.Equal(EditProblem.NothingChanged, VariantFile.Write("v", "fern-saloon.yaml", root, [KeyEdit.Put(["kind"], "car")]).Refusal!.Problem);
        Assert.Equal(EditProblem.NothingThere, VariantFile.Write("v", "fern-saloon.yaml", root, [KeyEdit.Remove(["brake"])]).Refusal!.Problem);
        Assert.Equal(EditProblem.NotReadBack, VariantFile.Write(" ", "fern-saloon.yaml", root, [KeyEdit.Put(["kind"], "boat")]).Refusal!.Problem);
        Assert.Equal(
            EditProblem.NotReadBack, VariantFile.Write("v", "fern-saloon.yaml", root, [KeyEdit.Put(["kind"], Node.Nothing)]).Refusal!.Problem);
    }

    private static IEnumerable<(string[] Path, Node Node)> Paths(Node node, string[] path) => node.Entries
        .SelectMany(entry => Paths(entry.Value, [.. path, entry.Key]).Prepend(([.. path, entry.Key], entry.Value)));
}
