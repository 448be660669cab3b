using System.Text;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Editing;

/// <summary>New values as a person would write them: rows of numbers and small groups on one line, everything else in lines of its own.</summary>
/// <param name="lineBreak">How lines end.</param>
/// <param name="step">Blanks by which a group stands further in than its key.</param>
/// <param name="dashStep">Blanks by which a dash stands further in than its key.</param>
internal sealed class ValueText(string lineBreak, int step, int dashStep)
{
    private const int Widest = 100;

    /// <summary>Whether groups of single values are written on one line.</summary>
    public bool GroupsOnOneLine { get; init; } = true;

    /// <summary>Whether to quote what could do without.</summary>
    public bool AlwaysQuoted { get; init; }

    /// <summary>A value on one line, as it stands in brackets.</summary>
    public string OnOneLine(Node value) => value.Kind switch
    {
        NodeKind.Mapping => $"{{{string.Join(", ", value.Entries.Select(entry => $"{Scalar(entry.Key, true)}: {OnOneLine(entry.Value)}"))}}}",
        NodeKind.Sequence => $"[{string.Join(", ", value.Items.Select(OnOneLine))}]",
        _ => value.IsEmpty ? "~" : Scalar(value.Text, true),
    };

    /// <summary>A key and its value in a block.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value.</param>
    /// <param name="column">Characters before the key on its line.</param>
    public string Entry(string key, Node value, int column) => $"{Scalar(key, false)}:{AfterKey(value, column, key.Length + 2)}";

    /// <summary>What stands behind a key's colon.</summary>
    /// <param name="value">The value.</param>
    /// <param name="column">Characters before the key on its line.</param>
    /// <param name="width">Characters of the key with its colon and blank.</param>
    public string AfterKey(Node value, int column, int width)
    {
        if (IsOneLine(value, column + width))
        {
            return " " + InBlock(value);
        }

        var text = new StringBuilder();
        var inner = column + (value.Kind == NodeKind.Mapping ? step : dashStep);
        foreach (var entry in value.Entries)
        {
            text.Append(lineBreak).Append(' ', inner).Append(Entry(entry.Key, entry.Value, inner));
        }

        foreach (var item in value.Items)
        {
            text.Append(lineBreak).Append(' ', inner).Append(Item(item, inner));
        }

        return text.ToString();
    }

    /// <summary>An item of a list in a block, with its dash.</summary>
    /// <param name="item">The item.</param>
    /// <param name="column">Characters before the dash on its line.</param>
    public string Item(Node item, int column)
    {
        const int Dash = 2;
        if (IsOneLine(item, column + Dash, isItem: true))
        {
            return "- " + InBlock(item);
        }

        var inner = column + Dash;
        var parts = item.Kind == NodeKind.Mapping
            ? item.Entries.Select(entry => Entry(entry.Key, entry.Value, inner))
            : item.Items.Select(one => Item(one, inner));
        return "- " + string.Join(lineBreak + new string(' ', inner), parts);
    }

    private string InBlock(Node value) => value.Kind == NodeKind.Scalar && !value.IsEmpty ? Scalar(value.Text, false) : OnOneLine(value);

    private bool IsOneLine(Node value, int from, bool isItem = false) => value.Kind switch
    {
        NodeKind.Mapping when value.Entries.Count > 0 =>
            (GroupsOnOneLine || isItem) && value.Entries.All(entry => entry.Value.Kind == NodeKind.Scalar) && Fits(value, from),
        NodeKind.Sequence when value.Items.Count > 0 => value.Items.All(IsRow) && Fits(value, from),
        _ => true,
    };

    private bool Fits(Node value, int from) => from + OnOneLine(value).Length <= Widest;

    private static bool IsRow(Node item) =>
        item.Kind == NodeKind.Scalar || (item.Kind == NodeKind.Sequence && item.Items.All(cell => cell.Kind == NodeKind.Scalar));

    private string Scalar(string text, bool inFlow) => ScalarText.Of(text, inFlow, alwaysQuoted: AlwaysQuoted && text.Length > 0 && !IsWord(text));

    // Keys and words such as true stay as they are.
    private static bool IsWord(string text) => text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_') && char.IsAsciiLetter(text[0]);
}
