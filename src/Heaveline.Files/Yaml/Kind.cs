using System.Text.Json.Nodes;
using Heaveline.Files.Forms;
using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>How a value is written in a file: in words, for the reader and for the schema.</summary>
public abstract class Kind
{
    /// <summary>What is wanted, with its article ("a spring rate with its unit").</summary>
    public abstract string Words { get; }

    /// <summary>An amount with its unit and, if known, its doubt.</summary>
    public static Kind<Amount<TDimension>> Amount<TDimension>()
        where TDimension : struct, IDimension => new AmountKind<TDimension>(TDimension.Usual);

    /// <summary>An amount of which one unit is the likely one: a number without unit is refused with an example in it.</summary>
    /// <param name="likelyUnit">Symbol of that unit.</param>
    public static Kind<Amount<TDimension>> Amount<TDimension>(string likelyUnit)
        where TDimension : struct, IDimension => new AmountKind<TDimension>(likelyUnit);

    /// <summary>Some text on one line.</summary>
    public static Kind<string> Text() => new TextKind(lines: false);

    /// <summary>Some text on one line or more.</summary>
    public static Kind<string> Lines() => new TextKind(lines: true);

    /// <summary>true or false.</summary>
    public static Kind<bool> YesNo() => new YesNoKind();

    /// <summary>A whole number between limits, both included.</summary>
    public static Kind<int> Count(int low, int high) => new CountKind(low, high);

    /// <summary>One of some words, each with what it stands for.</summary>
    public static Kind<T> Choice<T>(params (string Word, T Value)[] choices)
        where T : notnull => new ChoiceKind<T>(choices);

    /// <summary>A phrase with a pattern of its own, such as "31 mm for 50 mm".</summary>
    /// <param name="words">What is wanted, with its article.</param>
    /// <param name="pattern">A regular expression for editors (ECMA 262), loose where the parser is strict.</param>
    /// <param name="parse">Reads the text: the value, or the refusal with its place in the text.</param>
    public static Kind<T> Phrase<T>(string words, string pattern, Func<string, (T Value, QuantityRefusal? Refusal)> parse)
        where T : notnull => new PhraseKind<T>(words, pattern, parse);

    /// <summary>A list of at least some items.</summary>
    public static Kind<IReadOnlyList<T>> List<T>(Kind<T> item, int atLeast = 1)
        where T : notnull => new ListKind<T>(item, atLeast);

    /// <summary>A list of two: a row of a table, such as [0.1 m/s, 250 N].</summary>
    public static Kind<(TFirst First, TSecond Second)> Pair<TFirst, TSecond>(Kind<TFirst> first, Kind<TSecond> second)
        where TFirst : notnull
        where TSecond : notnull => new PairKind<TFirst, TSecond>(first, second);

    /// <summary>A group whose keys are names that the user chooses, each with a value of one kind, in the order of the text.</summary>
    public static Kind<IReadOnlyList<KeyValuePair<string, T>>> Named<T>(Kind<T> item)
        where T : notnull => new NamedKind<T>(item);

    /// <summary>The JSON Schema of the value.</summary>
    internal abstract JsonObject Schema(SchemaDefinitions definitions);

    /// <summary>The group of keys that a value of this kind, or each of its items, is; null for single values.</summary>
    internal virtual Shape? Group => null;

    /// <summary>How the value under a key of this kind is written; null when it has no such key.</summary>
    internal virtual Kind? Under(string key) => null;

    /// <summary>
    /// The group whose keys stand directly under a value of this kind; null for lists, names of the user's choice and single values.
    /// </summary>
    internal virtual Shape? Keys => null;

    /// <summary>How each item of a list of this kind is written; null when it is no list of one kind.</summary>
    internal virtual Kind? Item => null;

    /// <summary>Values that no key of this kind can have, to ask for its limits; none when there are none to ask for.</summary>
    internal virtual IReadOnlyList<string> Probes => [];

    /// <summary>What values of this kind usually are, where it has columns with a range each; null where nothing is said.</summary>
    internal virtual string? UsualWords => null;

    /// <summary>A key's field with what this kind knows of it.</summary>
    internal abstract FormField Describe(FormField field);

    /// <summary>The field of one value of this kind in a list or under a name of the user's choice.</summary>
    internal FormField DescribeItem(FormField list) => Describe(new FormField
    {
        Path = [.. list.Path, FormField.Any],
        Meaning = Group is { } group && Keys == group ? group.Meaning : list.Meaning,
        Kind = FieldKind.Text,
        Wanted = Words,
    });

    /// <summary>Reads a value without knowing its type; false when refused.</summary>
    internal abstract bool TryReadAny(Node node, Reader reader, out object value);

    /// <summary>A limit as a record states it, put into the unit that the user wrote where that changes no number.</summary>
    internal virtual ValueLimit Restate(RefusedValueException refused, string typed) => ValueLimit.Of(refused);

    /// <summary>A sound value of this kind, to go on checking the other keys when this one is refused; null when there is none.</summary>
    internal virtual object? Sample(string example)
    {
        var reader = new Reader(new SourceText("", example));
        var node = YamlTree.Of(reader);
        return node is not null && TryReadAny(node, reader, out var value) && reader.Count == 0 ? value : null;
    }
}
