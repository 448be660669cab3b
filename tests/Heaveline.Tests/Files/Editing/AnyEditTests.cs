using CsCheck;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Editing;

/// <summary>
/// Edits of every example car and variant: the values that were to change do, everything else stays, and everything can be taken back.
/// </summary>
public class AnyEditTests
{
    private static readonly string[] Values =
        [
            "21.5 N/mm ± 4 %",
            "-40 mm",
            "a: b",
            "#1",
            "it's",
            "\"so\"",
            "true",
            "~",
            "",
            " blank ",
            "31 mm for 50 mm at the wheel",
            "[x]",
            "a, b",
            "- x",
            "-",
            "two\nlines",
            "😀 ü",
            "a\\b",
            "x:",
            "?",
            "@",
            "%",
            "a #b",
            "null",
            "---",
            "1e3",
            "=",
            "'",
            "\t",
            "a:b",
            "<<",
            "x\u0007y",
        ];

    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
        .Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Files))]
    public void Every_single_value_of_an_example_can_be_changed_alone_and_changed_back(string file)
    {
        var text = Text(file);
        var root = Root(text);
        foreach (var (path, node) in Leaves(root, []))
        {
            foreach (var value in new[] { "12.5 mm ± 3 %", "a: b, #c [d]" })
            {
                var edited = Sound(CarFile.Edit(text, KeyEdit.Put(path, value)));
                Assert.True(Root(edited).IsSameAs(Changed(root, path, Node.Scalar(value)), inOrder: true), string.Join("/", path));
                Assert.Equal(text, Sound(CarFile.Edit(edited, KeyEdit.Put(path, node.Text))));

                // One run of characters differs, and it is no longer than old and new value with their quotes.
                var before = text.Zip(edited).TakeWhile(pair => pair.First == pair.Second).Count();
                var after = Enumerable.Reverse(text).Zip(Enumerable.Reverse(edited)).TakeWhile(pair => pair.First == pair.Second).Count();
                Assert.True(text.Length - before - after <= node.Text.Length + 2);
                Assert.True(edited.Length - before - after <= value.Length + 2);
            }
        }
    }

    [Theory, MemberData(nameof(Files))]
    public void Every_key_and_item_of_an_example_can_be_taken_out_and_put_back(string file)
    {
        var text = Text(file);
        var root = Root(text);
        foreach (var (path, node) in All(root, []))
        {
            var outcome = CarFile.Edit(text, KeyEdit.Remove(path));
            if (outcome.Refusal is { } refusal)
            {
                Assert.Equal(EditProblem.OnlyOne, refusal.Problem);
                continue;
            }

            var edited = Sound(outcome);
            Assert.True(Root(edited).IsSameAs(Without(root, path), inOrder: true), string.Join("/", path));
            Assert.Equal(text, outcome.Undo(edited));
            if (root.At([.. path[..^1]]) is { Kind: NodeKind.Mapping })
            {
                Assert.True(Root(Sound(CarFile.Edit(edited, KeyEdit.Put(path, node)))).IsSameAs(root), string.Join("/", path));
            }
        }
    }

    [Theory, MemberData(nameof(Files))]
    public void A_key_that_is_added_to_an_example_and_taken_out_leaves_the_same_characters(string file)
    {
        var text = Text(file);
        foreach (var (path, node) in All(Root(text), []).Where(pair => pair.Node.Kind == NodeKind.Mapping))
        {
            string[] added = [.. path, "track"];
            if (node.At("track") is null)
            {
                var edited = Sound(CarFile.Edit(text, KeyEdit.Put(added, "1.5 m")));
                Assert.Equal(text, Sound(CarFile.Edit(edited, KeyEdit.Remove(added))));
            }
        }
    }

    [Fact]
    public void Any_run_of_edits_is_read_as_wanted_or_refused_and_is_taken_back_to_the_same_characters()
    {
        var texts = Files.Select(row => Text(row)).ToArray();
        Gen.Select(OneOf(texts), Gen.Bool, Gen.Select(
            Gen.Int[0, 3], Gen.Int[0, 1000], OneOf(Values), OneOf("track", "note", "new key", "a: b")).Array[1, 12]).Sample(
            (start, windows, steps) =>
            {
                var text = windows ? start.Replace("\n", "\r\n", StringComparison.Ordinal) : start;
                var edits = new List<KeyEdit>();
                var (current, root) = (text, Root(text));
                foreach (var (what, where, value, key) in steps)
                {
                    var places = All(root, []).ToList();
                    var (path, node) = places[where % places.Count];
                    string[] inside = node.Kind == NodeKind.Mapping ? [.. path, key] : path;
                    var edit = what switch
                    {
                        0 => KeyEdit.Remove(path),
                        1 => KeyEdit.Put(path, value),
                        2 => KeyEdit.Put(inside, Block(value)),
                        _ => node.Kind == NodeKind.Sequence ? KeyEdit.Append(path, Block(value)) : KeyEdit.Put(inside, value),
                    };
                    var outcome = CarFile.Edit(current, edit);
                    if (outcome.Refusal is { } refusal)
                    {
                        // Nested too deep, it would not be read back.
                        var isDeep = refusal.Problem == EditProblem.NotReadBack && Depth(TreeEditing.Apply(root, edit, null)) > YamlTree.Deepest;
                        Assert.True(
                            isDeep || refusal.Problem is EditProblem.OnlyOne or EditProblem.CommentInside,
                            $"{refusal.Problem}: {refusal.Message}\n{current}");
                        continue;
                    }

                    edits.Add(edit);
                    current = outcome.Text!;
                    var wanted = TreeEditing.Apply(root, edit, null);
                    root = Root(current);
                    Assert.True(root.IsSameAs(wanted), current);
                    Assert.Equal(windows ? current.Split("\r\n").Length : 1, windows ? current.Split('\n').Length : current.Split('\r').Length);
                }

                var all = CarFile.Edit(text, edits);
                Assert.Equal(current, all.Text);
                Assert.Equal(text, all.Undo(all.Text!));

                // A comment on the first line belongs to the file.
                Assert.Equal(text.StartsWith('#'), current.StartsWith('#'));
            },
            iter: 150);
    }

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static int Depth(Node node) => node.Kind == NodeKind.Scalar ? 0
        : 1 + node.Items.Concat(node.Entries.Select(entry => entry.Value)).Select(Depth).DefaultIfEmpty(0).Max();

    private static Node Block(string value) => Node.Group(
        new("rate", Node.Scalar(value)),
        new(
            "inner key",
            Node.Group(new KeyValuePair<string, Node>("a", Node.List(Node.List(Node.Scalar(value), Node.Scalar("1 N")))), new("b", Node.Nothing))),
        new("items", Node.List(Node.Group(new KeyValuePair<string, Node>("what", Node.Scalar(value))), Node.Scalar(value))));

    private static string Text(string file) => File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", file)).ReplaceLineEndings("\n");

    private static Node Root(string text) => YamlReading.Value(new SourceText("", text)).Value ?? throw new InvalidOperationException(text);

    private static string Sound(EditOutcome outcome)
    {
        Assert.True(outcome.Refusal is null, outcome.Refusal?.Message);
        return outcome.Text!;
    }

    private static IEnumerable<(string[] Path, Node Node)> All(Node node, string[] path) => node.Entries.Select(entry => (entry.Key, entry.Value))
        .Concat(node.Items.Select((item, i) => ($"{i + 1}", item)))
        .SelectMany(child => All(child.Item2, [.. path, child.Item1]).Prepend(([.. path, child.Item1], child.Item2)));

    private static IEnumerable<(string[] Path, Node Node)> Leaves(Node node, string[] path) =>
        All(node, path).Where(pair => pair.Node.Kind == NodeKind.Scalar);

    // The wanted document, by means of the test's own.
    private static Node Changed(Node node, string[] path, Node value) => path.Length == 0 ? value
        : node.Kind == NodeKind.Mapping ? Node.Group(
            node.Entries.Select(entry => KeyValuePair.Create(entry.Key, entry.Key == path[0] ? Changed(entry.Value, path[1..], value) : entry.Value)))
        : Node.List(node.Items.Select((item, i) => $"{i + 1}" == path[0] ? Changed(item, path[1..], value) : item));

    private static Node Without(Node node, string[] path) => path.Length == 1
        ? node.Kind == NodeKind.Mapping
            ? Node.Group(node.Entries.Where(entry => entry.Key != path[0]).Select(entry => KeyValuePair.Create(entry.Key, entry.Value)))
            : Node.List(node.Items.Where((_, i) => $"{i + 1}" != path[0]))
        : node.Kind == NodeKind.Mapping
            ? Node.Group(
                node.Entries.Select(entry => KeyValuePair.Create(entry.Key, entry.Key == path[0] ? Without(entry.Value, path[1..]) : entry.Value)))
        : Node.List(node.Items.Select((item, i) => $"{i + 1}" == path[0] ? Without(item, path[1..]) : item));
}
