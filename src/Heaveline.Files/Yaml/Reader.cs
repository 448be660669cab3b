using System.Diagnostics.CodeAnalysis;

namespace Heaveline.Files.Yaml;

/// <summary>Gathers what is wrong in one text while it is read to its end.</summary>
public sealed class Reader(SourceText source)
{
    // Fewer cells are told one by one.
    private const int Column = 3;

    private readonly List<Refusal> refusals = [];
    private readonly List<(Place Place, ValueLimit Limit)> limits = [];
    private readonly List<Warning> first = [];
    private readonly List<Warning> warnings = [];
    private readonly List<(Warning Warning, bool IsImpossible)> unusual = [];

    /// <summary>The text that is read.</summary>
    public SourceText Source => source;

    /// <summary>Refusals so far, in the order of the text.</summary>
    public IReadOnlyList<Refusal> Refusals =>
        [.. refusals.OrderBy(r => r.File != source.File).ThenBy(r => r.File, StringComparer.Ordinal).ThenBy(r => r.Line).ThenBy(r => r.Column)];

    /// <summary>Warnings so far: those that may explain others first, each once and in the order of the text.</summary>
    public IReadOnlyList<Warning> Warnings => [.. InOrder(first).Concat(InOrder([.. warnings, .. Unusual])).Distinct()];

    // Where something else is said of the same value it says more: it knows the rest of the car.
    private IEnumerable<Warning> Unusual => unusual.Select(u => u.Warning).Where(u => !Told(u, first) && !Told(u, warnings)
        && !refusals.Any(r => (r.File, r.Line, r.Column) == (u.File, u.Line, u.Column)));

    /// <summary>Refusals so far.</summary>
    internal int Count => refusals.Count;

    /// <summary>Limits that values were refused for, with the places of the values.</summary>
    internal IReadOnlyList<(Place Place, ValueLimit Limit)> Limits => limits;

    /// <summary>Refuses a value for its limit.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="subject">What it is the value of.</param>
    /// <param name="given">The value as given.</param>
    /// <param name="limit">What it must be.</param>
    /// <param name="advice">What to write instead.</param>
    internal void Refuse(Place place, string subject, string given, ValueLimit limit, string advice)
    {
        limits.Add((place, limit));
        Refuse(place, $"{subject} is {given}; it must be {limit.Words}.", advice);
    }

    /// <summary>Refuses what stands at a place.</summary>
    public void Refuse(Place place, string message, string advice) =>
        refusals.Add(new Refusal(place.File ?? source.File, place.Line, place.Column, place.Length, Short(message), advice));

    /// <summary>Warns about what stands at a place.</summary>
    public void Warn(Place place, string message, string advice) => warnings.Add(Warning(place, message, advice));

    /// <summary>Tells of something that is not said at a place, and what is taken instead: no slip.</summary>
    public void WarnUnknown(Place place, string message, string advice) =>
        warnings.Add(Warning(place, message, advice) with { IsUnknown = true });

    /// <summary>Tells a value that is not usual, unless something else is said of it.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="message">What it is and what is usual.</param>
    /// <param name="advice">The likely slip.</param>
    /// <param name="isImpossible">Whether nothing on wheels has it.</param>
    internal void WarnUnusual(Place place, string message, string advice, bool isImpossible) =>
        unusual.Add((Warning(place, message, advice), isImpossible));

    /// <summary>Tells once of a column of a table in which every cell but one at most is not usual in the same way: its unit, most likely.</summary>
    /// <param name="table">A list; only one of pairs has columns.</param>
    internal void GatherColumns(Node table)
    {
        for (var column = 0; column < 2; column++)
        {
            List<Node> cells = [.. table.Items.Where(row => row.Kind == NodeKind.Sequence && row.Items.Count == 2).Select(row => row.Items[column])];
            var told = unusual.FindAll(u => cells.Any(cell => IsAt(u.Warning, cell.Place)));
            if (told.Count < Column || told.Count < cells.Count - 1 || told.Any(u => u.Warning.Advice != told[0].Warning.Advice))
            {
                continue;
            }

            var first = told[0].Warning;
            unusual.RemoveAll(told.Contains);
            unusual.Add((first with { Message = $"{first.Message} So are {told.Count - 1} more of its column." }, told.Any(u => u.IsImpossible)));
        }
    }

    private bool IsAt(Warning told, Place place) => (told.File, told.Line, told.Column) == (place.File ?? source.File, place.Line, place.Column);

    /// <summary>Refuses what nothing on wheels has, of what was told as not usual.</summary>
    internal void RefuseImpossible()
    {
        foreach (var (told, _) in unusual.Where(u => u.IsImpossible))
        {
            refusals.Add(new Refusal(told.File, told.Line, told.Column, told.Length, Short(told.Message), told.Advice));
        }

        unusual.RemoveAll(u => u.IsImpossible);
    }

    /// <summary>Warns, before all others, about what may explain them.</summary>
    internal void WarnFirst(Place place, string message, string advice) => first.Add(Warning(place, message, advice));

    /// <summary>Whether a node is of the kind wanted and has a value; refused when not.</summary>
    internal bool Is(Node node, NodeKind kind, string wanted)
    {
        if (node.Kind == NodeKind.Scalar && node.Text == FileTemplate.Blank)
        {
            Refuse(node.Place, $"{node.Subject} is not filled in yet; {wanted} is wanted.", "Put what you measured here.");
            return false;
        }

        if (node.Kind == kind && !node.IsEmpty)
        {
            return true;
        }

        if (node.IsEmpty)
        {
            Refuse(node.Place, $"{node.Subject} has no value; {wanted} is wanted.", "Write the value after the colon, or leave the key out.");
        }
        else if (node.Kind != NodeKind.Refused)
        {
            Refuse(node.Place, $"{node.Subject} is {Words(node.Kind)}; {wanted} is wanted.", kind switch
            {
                NodeKind.Mapping => "Write keys with values below it, each on a line of its own and indented.",
                NodeKind.Sequence => "Write a list: each item on a line of its own after a dash and a blank.",
                _ => "Write one value after the colon.",
            });
        }

        return false;
    }

    /// <summary>Refuses and gives no value: the end of a failed attempt.</summary>
    internal bool Fail<T>(Place place, string message, string advice, [MaybeNullWhen(false)] out T value)
    {
        Refuse(place, message, advice);
        value = default;
        return false;
    }

    private static bool Told(Warning one, List<Warning> others) =>
        others.Any(other => (other.File, other.Line, other.Column) == (one.File, one.Line, one.Column));

    private Warning Warning(Place place, string message, string advice) =>
        new(place.File ?? source.File, place.Line, place.Column, place.Length, message, advice);

    private IEnumerable<Warning> InOrder(List<Warning> some) =>
        some.OrderBy(w => w.File != source.File).ThenBy(w => w.File, StringComparer.Ordinal).ThenBy(w => w.Line).ThenBy(w => w.Column);

    // A message quotes what the file says; a file may say ten thousand words.
    private static string Short(string message) =>
        message.Length <= 400 ? message : string.Concat(message.AsSpan(0, 200), " … ", message.AsSpan(message.Length - 200));

    private static string Words(NodeKind kind) => kind switch
    {
        NodeKind.Mapping => "a group of keys",
        NodeKind.Sequence => "a list",
        _ => "a single value",
    };
}
