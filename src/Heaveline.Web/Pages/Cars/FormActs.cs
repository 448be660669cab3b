using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Worksheets;

namespace Heaveline.Web.Pages.Cars;

/// <summary>What the fields of the form can do: type, add, take out, open a part. What is typed waits until the hand rests.</summary>
/// <param name="editor">The window that the form belongs to.</param>
/// <param name="changed">Called when the draft has changed.</param>
/// <param name="toggled">Called with the parts that are open when one was opened or closed.</param>
public sealed class FormActs(CarEditor editor, Action changed, Action<IReadOnlyCollection<string>> toggled)
{
    /// <summary>How long the hand must rest before what was typed is looked at.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    private readonly Dictionary<string, (IReadOnlyList<string> Path, string Text)> typed = [];
    private string? typedWhole;
    private int turn;

    /// <summary>The window.</summary>
    public CarEditor Editor => editor;

    /// <summary>The units that the reader reads in.</summary>
    public ReaderUnits Units { get; init; } = ReaderUnits.Metric;

    /// <summary>What the car says already, by the names of the readings of a worksheet that ask it too.</summary>
    public IReadOnlyDictionary<string, string[]> Known
    {
        get
        {
            string Text(params string[] path) => editor.Draft.Whole?.At(path) is { } node && node.Text != CarFile.Blank ? node.Text : "";
            return new Dictionary<string, string[]>(StringComparer.Ordinal)
            {
                ["wheelbase"] = [Text("wheelbase")],
                ["tyre"] = [Text("front", "tyre", "rate")],
                ["unsprung"] = [UnsprungSum.Of(Text("front", "unsprung-mass"), Text("rear", "unsprung-mass"))],
                ["track"] = [Text("front", "track"), Text("rear", "track")],
            };
        }
    }

    /// <summary>The parts that are open, by the paths of their keys.</summary>
    public HashSet<string> Open { get; } = new(StringComparer.Ordinal);

    /// <summary>Something was typed into a field.</summary>
    public Task Type(IReadOnlyList<string> path, string text)
    {
        typed[string.Join('/', path)] = (path, text);
        return Wait();
    }

    /// <summary>The text itself was typed in.</summary>
    public Task TypeWhole(string text)
    {
        typedWhole = text;
        return Wait();
    }

    /// <summary>Makes a change at once, after what was typed before it.</summary>
    public void Now(IReadOnlyList<string> path, Func<CarDraft, (CarDraft Draft, EditRefusal? Refusal)> change)
    {
        Settle();
        editor.Do(path, change);
        changed();
    }

    /// <summary>Looks at once at what was typed.</summary>
    public void Settle()
    {
        turn++;
        if (typedWhole is { } whole)
        {
            typedWhole = null;
            // A browser's text field has line feeds only; the file keeps its own line ends.
            editor.Write(editor.SavedText.Contains("\r\n", StringComparison.Ordinal) ? whole.ReplaceLineEndings("\r\n") : whole);
        }

        var waiting = typed.Values.ToList();
        typed.Clear();
        foreach (var (path, text) in waiting)
        {
            editor.Do(path, draft => draft.Put(path, Node.Scalar(text)));
        }
    }

    /// <summary>Opens or closes a part.</summary>
    public void Toggle(string key)
    {
        if (!Open.Remove(key))
        {
            Open.Add(key);
        }

        toggled(Open);
    }

    private async Task Wait()
    {
        var mine = ++turn;
        await Task.Delay(Rest);
        if (mine == turn)
        {
            Settle();
            changed();
        }
    }
}
