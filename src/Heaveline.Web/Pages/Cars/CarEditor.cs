using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Cars;

/// <summary>One window on a file: the text as it was read, the draft that has grown from it, and what became of saving it.</summary>
public sealed class CarEditor
{
    private const int MostUndone = 200;
    private readonly Garage garage;
    private readonly Stack<(string Text, string? Place)> before = [];

    private CarEditor(Garage garage, string file, string text, Stamp stamp)
    {
        this.garage = garage;
        Stamp = stamp;
        SavedText = text;
        Draft = CarDraft.Of(garage, file, text);
        Keep();
    }

    /// <summary>The draft.</summary>
    public CarDraft Draft { get; private set; }

    /// <summary>The last draft that was a car; null when none was.</summary>
    public CarDraft? Good { get; private set; }

    /// <summary>The text as it was read or saved last.</summary>
    public string SavedText { get; private set; }

    /// <summary>The stamp of that text; null when it is not on the disk.</summary>
    public Stamp? Stamp { get; private set; }

    /// <summary>Whether there is something to save.</summary>
    public bool IsChanged => Draft.Text != SavedText;

    /// <summary>Whether there is a step to take back.</summary>
    public bool CanUndo => before.Count > 0;

    /// <summary>A save that met another text on the disk; null when there is none to decide on.</summary>
    public SaveOutcome? Conflict { get; private set; }

    /// <summary>Edits that could not be made, by the path of their field.</summary>
    public Dictionary<string, EditRefusal> Refused { get; } = [];

    /// <summary>All that is said about the draft, each at its field.</summary>
    public IReadOnlyList<Remark> Findings { get; private set; } = [];

    /// <summary>The form.</summary>
    public IReadOnlyList<FormSection> Sections { get; private set; } = [];

    /// <summary>Earlier versions, the newest first.</summary>
    public IReadOnlyList<EarlierVersion> Earlier => garage.Earlier(Draft.File);

    /// <summary>A window on a file; or the words why there is none.</summary>
    public static (CarEditor? Editor, string Problem) Open(Garage garage, string file)
    {
        var read = garage.Read(file);
        return read is { Text: { } text, Stamp: { } stamp }
            ? (new CarEditor(garage, file, text, stamp), "")
            : (null, $"{read.Refusal!.Message} {read.Refusal.Advice}");
    }

    /// <summary>Makes a change of the draft, or keeps the reason beside the field.</summary>
    /// <param name="path">The field.</param>
    /// <param name="change">The change.</param>
    public void Do(IReadOnlyList<string> path, Func<CarDraft, (CarDraft Draft, EditRefusal? Refusal)> change)
    {
        var key = string.Join('/', path);
        var (draft, refusal) = change(Draft);
        Refused.Remove(key);
        if (refusal is not null)
        {
            Refused[key] = refusal;
        }

        Move(draft, key);
    }

    /// <summary>Puts another text in place of the draft's.</summary>
    public void Write(string text)
    {
        Refused.Clear();
        Move(Draft.With(text), "");
    }

    /// <summary>Takes the last step back; what is typed into one field counts as one.</summary>
    public void Undo()
    {
        if (before.TryPop(out var last))
        {
            Refused.Clear();
            Draft = Draft.With(last.Text);
            Keep();
        }
    }

    /// <summary>Saves the draft if the file is still the one that was read.</summary>
    /// <returns>What to tell the reader.</returns>
    public SaveOutcome Save()
    {
        var outcome = garage.Save(Draft.File, Draft.Text, Stamp);
        Conflict = outcome.End == SaveEnd.Conflict ? outcome : null;
        if (outcome.End is SaveEnd.Saved or SaveEnd.Unchanged)
        {
            (SavedText, Stamp) = (Draft.Text, outcome.Stamp);
        }

        return outcome;
    }

    /// <summary>
    /// After a conflict: saves the draft over what stands on the disk, which the reader has seen; that is kept as an earlier version.
    /// </summary>
    public SaveOutcome Overwrite()
    {
        Stamp = Conflict?.Stamp;
        return Save();
    }

    /// <summary>After a conflict: goes on with what stands on the disk. Taking the step back brings the draft again.</summary>
    public void Reload()
    {
        if (Conflict is { TextOnDisk: { } text })
        {
            (SavedText, Stamp, Conflict) = (text, Conflict.Stamp, null);
            Write(text);
        }
    }

    /// <summary>Takes up a text that was made from a content of the file and never saved; taking the step back brings what stood here.</summary>
    /// <param name="saved">The content that it was made from.</param>
    /// <param name="from">Its stamp.</param>
    /// <param name="text">The text.</param>
    public void TakeUp(string saved, Stamp from, string text)
    {
        (SavedText, Stamp) = from == Stamp ? (SavedText, Stamp) : (saved, from);
        Write(text);
        Follow();
    }

    /// <summary>
    /// Looks whether the file is still the one that was read. Where it is not and nothing here is unsaved, the window goes on with the file; where
    /// something is, there is a conflict to decide on.
    /// </summary>
    /// <returns>What was met on the disk; null when it is as it was read.</returns>
    public SaveOutcome? Follow()
    {
        var met = garage.Met(Draft.File, Draft.Text, Stamp);
        if (met is not { End: SaveEnd.Conflict })
        {
            return met;
        }

        if (met.TextOnDisk is { } text && (!IsChanged || text == Draft.Text))
        {
            (SavedText, Stamp, Conflict) = (text, met.Stamp, null);
            Write(text);
        }
        else
        {
            Conflict = met;
        }

        return met;
    }

    /// <summary>Reads the draft anew: a file that it is made of has changed, such as the base of a variant.</summary>
    public void Reread()
    {
        Draft = CarDraft.Of(garage, Draft.File, Draft.Text);
        Keep();
    }

    /// <summary>Leaves a conflict undecided.</summary>
    public void PutOff() => Conflict = null;

    /// <summary>Saves the draft as the beginning of another car, every value marked as this one's.</summary>
    /// <param name="file">The new file's name.</param>
    /// <param name="title">What the new car is called.</param>
    public SaveOutcome SaveNewCar(string file, string title)
    {
        if (Draft.IsVariant)
        {
            return SaveCopy(file, title);
        }

        var begun = NewCar.From(Draft.Text, title);
        return begun.Text is { } text ? garage.Save(file, text, null) : Refusal(file, begun.Refusal!);
    }

    /// <summary>Saves the draft as a new file beside the old one.</summary>
    /// <param name="file">The new file's name.</param>
    /// <param name="title">What the car or variant is called there.</param>
    public SaveOutcome SaveCopy(string file, string title)
    {
        var edited = CarFile.Edit(Draft.Text, KeyEdit.Put([Draft.IsVariant ? "variant" : "car"], title));
        return edited.Text is { } text ? garage.Save(file, text, null) : Refusal(file, edited.Refusal!);
    }

    /// <summary>Saves what differs from the file as it was read as a variant of that file.</summary>
    /// <param name="file">The variant's file.</param>
    /// <param name="title">What the variant is called.</param>
    public SaveOutcome SaveVariant(string file, string title)
    {
        var saved = CarDraft.Of(garage, Draft.File, SavedText);
        if (saved.Whole is not { } from || Draft.Whole is not { } to)
        {
            return Refusal(file, new EditRefusal(EditProblem.NotSound, "the text cannot be read as it stands.", "Put right what is refused first."));
        }

        // A base is named as seen from the variant's own folder.
        var of = Path.GetRelativePath(Path.GetDirectoryName("/" + file)!, "/" + Draft.File).Replace(Path.DirectorySeparatorChar, '/');
        var written = VariantFile.Write(title, of, from, to);
        return written.Text is { } text ? garage.Save(file, text, null) : Refusal(file, written.Refusal!);
    }

    /// <summary>An earlier version's text.</summary>
    public GarageText ReadEarlier(DateTime until) => garage.ReadEarlier(Draft.File, until);

    private static SaveOutcome Refusal(string file, EditRefusal refusal) =>
        new() { End = SaveEnd.TextRefused, Name = file, Text = "", Message = refusal.Message, Advice = refusal.Advice };

    private void Move(CarDraft draft, string place)
    {
        if (draft.Text == Draft.Text)
        {
            return;
        }

        // Letters typed into one field one after another are one step.
        if (before.Count == 0 || before.Peek().Place != place || place.Length == 0)
        {
            if (before.Count >= MostUndone)
            {
                var kept = before.Take(MostUndone / 2).Reverse().ToList();
                before.Clear();
                kept.ForEach(before.Push);
            }

            before.Push((Draft.Text, place));
        }

        Draft = draft;
        Keep();
    }

    private void Keep()
    {
        Findings = Remarks.Of(Draft, garage.Folder);
        Sections = FormSection.Of(Draft, Findings);
        if (Draft.Reading.Value is not null)
        {
            Good = Draft;
        }
    }
}
