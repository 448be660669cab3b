using Heaveline.Files.Choosing;
using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>The question of the page as a study's file of the garage: read before it is written, whole or not at all.</summary>
internal static class StudyKeeping
{
    /// <summary>Keeps a question as a file of its own. One that says the very same already is not written twice.</summary>
    /// <param name="given">Its words.</param>
    /// <param name="title">What it is to be called: its file is called after it.</param>
    /// <param name="note">What a reader should know; blank for nothing.</param>
    /// <param name="garage">The garage.</param>
    /// <returns>The study's name in the garage, or why none was written: then nothing was.</returns>
    public static (string? File, string Problem) KeepAs(Given given, string title, string note, GarageView garage)
    {
        var file = FileName.Of(title, "");
        if (FileName.Problem(file) is { } unnamed)
        {
            return (null, unnamed);
        }

        var text = StudyText.Of(SheetOf(given, title.Trim(), note, file));
        if (Refusal(garage, file, text) is { } refusal)
        {
            return (null, refusal);
        }

        var saved = garage.Garage.Save(file, text, null);
        var problem = saved.End == SaveEnd.Conflict && saved.TextOnDisk == text ? "" : FileName.Problem(saved, file);
        return (problem.Length == 0 ? file : null, problem);
    }

    /// <summary>Writes what a page asks otherwise into the study's file that it was opened with; all else in it stays, remarks too.</summary>
    /// <param name="given">The words of the page.</param>
    /// <param name="study">The file as it is now.</param>
    /// <param name="read">The stamp under which it was opened: where another lies on the disk nothing is written.</param>
    /// <param name="garage">The garage.</param>
    /// <returns>What came of it, or why nothing was tried.</returns>
    public static (SaveOutcome? Outcome, string Problem) Save(Given given, OpenedStudy study, Stamp? read, GarageView garage)
    {
        if (study is not { Text.Text: { } text, Sheet: { } sheet })
        {
            return (null, study.Problem);
        }

        var edited = StudyText.Edited(text, SheetOf(given, sheet.Name, sheet.Note, study.File), study.Changed(given, garage));
        if (edited.Text is not { } written)
        {
            return (null, $"The file stays as it is: {edited.Refusal!.Message} {edited.Refusal.Advice}");
        }

        return Refusal(garage, study.File, written) is { } refusal ? (null, refusal) : (garage.Garage.Save(study.File, written, read), "");
    }

    private static string? Refusal(GarageView garage, string file, string text) =>
        garage.Garage.Study(file, text) is { Value: null, Refusals: [var first, ..] }
            ? $"No file can ask this: {first.Message} {first.Advice}"
            : null;

    // A study that lies in a folder names the others from there.
    private static ChooseSheet SheetOf(Given given, string name, string note, string file)
    {
        var up = string.Concat(Enumerable.Repeat("../", file.Count(c => c == '/')));
        return new ChooseSheet
        {
            Name = name,
            File = file,
            Note = note,
            Lines =
            [
                .. ChooseStudy.Question.Choices.SelectMany(choice => given.All(choice).Select(words => new ChooseLine(
                    choice.Name, choice.Name == Choices.Car.Name ? GarageView.FileOf(words) : words, 1, 1, 1))),
            ],
        }
        .Named((path, choice) => choice == ChooseSheet.Road && GarageView.RoadNames.Contains(path) ? path : up + path);
    }
}
