using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Garages;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Cars;

/// <summary>A car file or variant as it stands on the page: its text, saved or not, and what the text says.</summary>
public sealed class CarDraft
{
    private const string Change = "change";
    private readonly Garage garage;

    private CarDraft(Garage garage, string file, string text)
    {
        this.garage = garage;
        File = file;
        Text = text;
        Reading = garage.Car(file, text);
        Own = YamlReading.Value(new SourceText(file, text)).Value;
        IsVariant = Own?.At("variant") is not null || Own?.At("of") is not null || Own?.At(Change) is not null;
        Unmeasured = IsVariant ? new Dictionary<int, string>() : UnmeasuredLines.In(text);
        Base = IsVariant && Reading.Sources.Count > 1 ? garage.Car(Reading.Sources[1].File, Reading.Sources[1].Text).Root : null;
    }

    /// <summary>The file's name in the garage.</summary>
    public string File { get; }

    /// <summary>The whole text.</summary>
    public string Text { get; }

    /// <summary>The car, or every refusal.</summary>
    public Reading<Car> Reading { get; }

    /// <summary>The text's own keys, of a variant its few; null when the text is not sound YAML.</summary>
    public Node? Own { get; }

    /// <summary>Lines that say that nobody has measured their values on this car, each with the words that it says so in.</summary>
    public IReadOnlyDictionary<int, string> Unmeasured { get; }

    /// <summary>Whether it changes another file.</summary>
    public bool IsVariant { get; }

    /// <summary>The document that a variant changes, with its own bases; null for a car file and when the base cannot be had.</summary>
    public Node? Base { get; }

    /// <summary>The document that the form shows: the file's own, or the base with the changes in it. Null when it cannot be put together.</summary>
    public Node? Whole => Own is null ? null : Reading.Root;

    /// <summary>The file that a variant changes, by its name in the garage; null for a car file.</summary>
    public string? BaseFile => IsVariant && Reading.Sources.Count > 1 ? Reading.Sources[1].File : null;

    /// <summary>A text under a name.</summary>
    public static CarDraft Of(Garage garage, string file, string text) => new(garage, file, text);

    /// <summary>The same file with another text.</summary>
    public CarDraft With(string text) => text == Text ? this : new CarDraft(garage, File, text);

    /// <summary>Whether the variant itself changes a value, or a part of it.</summary>
    public bool IsChangedHere(IReadOnlyList<string> path) => IsVariant && !IsHead(path) && Own!.At([.. Inside(ListOf(path) ?? path)]) is not null;

    /// <summary>The draft with a value put under a path of the car, which is then the car's own; or why it cannot be.</summary>
    public (CarDraft Draft, EditRefusal? Refusal) Put(IReadOnlyList<string> path, Node value)
    {
        var (draft, refusal) = Edit([.. Brought(path), KeyEdit.Put(Inside(path), value)]);
        return (refusal is null ? draft.Confirmed(path).WithoutReadings(path) : draft, refusal);
    }

    /// <summary>The draft with a value that a worksheet gave, and at the end of its line from what.</summary>
    /// <param name="path">The path of the key.</param>
    /// <param name="text">The value.</param>
    /// <param name="from">The readings, in words.</param>
    public (CarDraft Draft, EditRefusal? Refusal) PutWorkedOut(IReadOnlyList<string> path, string text, string from)
    {
        var (draft, refusal) = Put(path, Node.Scalar(text));
        return refusal is null && At(draft.Own, draft.Inside(path)) is { Kind: NodeKind.Scalar } node
            ? (draft.With(WorkedOutLines.Mark(draft.Text, node.Place.Line, from)), null)
            : (draft, refusal);
    }

    /// <summary>Where a value is from that nobody has measured on this car, in words; null when it is the car's own.</summary>
    public string? UnmeasuredBy(IReadOnlyList<string> path) =>
        Unmeasured.Count > 0 && At(Own, path) is { } node
            ? UnmeasuredLines.Of(node).Select(line => Unmeasured.GetValueOrDefault(line)).FirstOrDefault(words => words is not null)
            : null;

    /// <summary>The draft with the values of a part told to be this car's own; of all of it for an empty path.</summary>
    public CarDraft Confirmed(IReadOnlyList<string> path) =>
        Unmeasured.Count > 0 && At(Own, path) is { } node ? With(UnmeasuredLines.Confirm(Text, UnmeasuredLines.Of(node))) : this;

    // What is written anew was worked out from no readings.
    private CarDraft WithoutReadings(IReadOnlyList<string> path) =>
        At(Own, Inside(path)) is { } node ? With(WorkedOutLines.Without(Text, UnmeasuredLines.Of(node))) : this;

    /// <summary>The draft with an item more in a list.</summary>
    public (CarDraft Draft, EditRefusal? Refusal) Append(IReadOnlyList<string> path, Node item) =>
        Edit([.. Brought([.. path, "1"]), KeyEdit.Append(Inside(path), item)]);

    /// <summary>The draft without a value. Groups that would be left without any go too; a variant says ~ where its base has the value.</summary>
    public (CarDraft Draft, EditRefusal? Refusal) TakeOut(IReadOnlyList<string> path)
    {
        if (ListOf(path) is null && IsVariant && Base?.At([.. path]) is not null)
        {
            return Edit(KeyEdit.Put(Inside(path), Node.Nothing));
        }

        // The last item of a list takes the list with it.
        return ListOf(path) is { } list && At(Whole, list)!.Items.Count == 1
            ? TakeOut(list)
            : Edit([.. Brought(path), KeyEdit.Remove(Widest(Inside(path)))]);
    }

    /// <summary>The variant without its change of a value, which is then the base's again.</summary>
    public (CarDraft Draft, EditRefusal? Refusal) PutBack(IReadOnlyList<string> path) => Edit(KeyEdit.Remove(Widest(Inside(ListOf(path) ?? path))));

    /// <summary>The draft with one of several keys in place of another of the same group.</summary>
    /// <param name="old">The path of the key that stands there.</param>
    /// <param name="key">The key that shall stand there.</param>
    /// <param name="value">Its value.</param>
    public (CarDraft Draft, EditRefusal? Refusal) Switch(IReadOnlyList<string> old, string key, Node value)
    {
        var (draft, refusal) = Put([.. old.SkipLast(1), key], value);
        if (refusal is not null || draft.Whole is { } whole && At(whole, old) is null)
        {
            return (refusal is null ? draft : this, refusal);
        }

        // Over a base the new key drives the old one out; in one's own text it must be taken out.
        (draft, refusal) = draft.IsChangedHere(old) && draft.ListOf(old) is null ? draft.PutBack(old) : draft.TakeOut(old);
        return (refusal is null ? draft : this, refusal);
    }

    private (CarDraft Draft, EditRefusal? Refusal) Edit(params KeyEdit[] edits)
    {
        var outcome = CarFile.Edit(Text, edits);
        return outcome.Text is { } text ? (With(text), null) : (this, outcome.Refusal);
    }

    // Where a value of the car stands in the text itself. The head of a variant (variant, of, note) stands at its top.
    private IReadOnlyList<string> Inside(IReadOnlyList<string> path) => !IsVariant || IsHead(path) ? path : [Change, .. path];

    private static bool IsHead(IReadOnlyList<string> path) => path is ["variant"] or ["of"] or ["note"];

    // A variant replaces lists whole: before an item of one changes, the base's list is copied into it.
    private IEnumerable<KeyEdit> Brought(IReadOnlyList<string> path) =>
        IsVariant && ListOf(path) is { } list && Own!.At([Change, .. list]) is null && Whole?.At([.. list]) is { } items
            ? [KeyEdit.Put(Inside(list), items)]
            : [];

    // The path of the list that a path leads through; null when it leads through none.
    private IReadOnlyList<string>? ListOf(IReadOnlyList<string> path)
    {
        for (var n = 1; n < path.Count; n++)
        {
            if (Whole?.At([.. path.Take(n)]) is { Kind: NodeKind.Sequence })
            {
                return [.. path.Take(n)];
            }
        }

        return null;
    }

    // A group with one key is taken out with it, since it may not stand empty; the top is never taken out.
    private IReadOnlyList<string> Widest(IReadOnlyList<string> path)
    {
        while (path.Count > 1 && At(Own, [.. path.SkipLast(1)]) is { } parent && parent.Entries.Count + parent.Items.Count == 1
            && path.Count > (IsVariant ? 2 : 1))
        {
            path = [.. path.SkipLast(1)];
        }

        return path;
    }

    /// <summary>The value under keys and item numbers, counted from 1; null when there is none.</summary>
    public static Node? At(Node? node, IReadOnlyList<string> path)
    {
        foreach (var part in path)
        {
            node = node is { Kind: NodeKind.Sequence }
                ? int.TryParse(part, out var number) && number >= 1 && number <= node.Items.Count ? node.Items[number - 1] : null
                : node?.At(part);
        }

        return node;
    }
}
