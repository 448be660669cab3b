using Heaveline.Files.Choosing;
using Heaveline.Files.Garages;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>The question of the page as a study's file of the garage: read before it is written, whole or not at all.</summary>
internal static class StudyKeeping
{
    // So many studies of one car beside each other, before it is better to tidy up.
    private const int Most = 99;

    /// <summary>Keeps a question; one that is kept already is not kept twice.</summary>
    /// <param name="given">Its words.</param>
    /// <param name="asked">What they ask.</param>
    /// <param name="garage">The garage.</param>
    /// <returns>The study's name in the garage.</returns>
    /// <exception cref="RefusedValueException">None can be written: nothing is.</exception>
    public static string Keep(Given given, ChooseAsked asked, GarageView garage)
    {
        for (var number = 1; number <= Most; number++)
        {
            var name = "what to buy" + (number > 1 ? FormattableString.Invariant($" {number}") : "");
            var file = PassVariant.FileName(given.Of(Choices.Car)!, name) + ".yaml";
            var text = StudyText.Of(SheetOf(given, $"{asked.Car.Name}, {name}", file));
            if (garage.Garage.Study(file, text) is { Value: null, Refusals: [var first, ..] })
            {
                throw new RefusedValueException("This question", "not kept", "one that a file may ask", $"{first.Message} {first.Advice}");
            }

            var saved = garage.Garage.Save(file, text, null);
            if (saved.End is SaveEnd.Saved or SaveEnd.Unchanged || garage.Garage.Read(file).Text == text)
            {
                return file;
            }

            if (saved.End != SaveEnd.Conflict)
            {
                throw new RefusedValueException("This question", "not kept", "kept", $"{saved.Message} {saved.Advice}");
            }
        }

        throw new RefusedValueException(
            "This question", "not kept", "one of fewer than a hundred of its car", "Take some of them out on the first page.");
    }

    // A study that lies in a folder names the others from there.
    private static ChooseSheet SheetOf(Given given, string name, string file)
    {
        var up = string.Concat(Enumerable.Repeat("../", file.Count(c => c == '/')));
        return new ChooseSheet
        {
            Name = name,
            File = file,
            Lines =
            [
                .. ChooseStudy.Question.Choices.SelectMany(choice => given.All(choice).Select(words => new ChooseLine(
                    choice.Name, choice.Name == Choices.Car.Name ? GarageView.FileOf(words) : words, 1, 1, 1))),
            ],
        }
        .Named((path, choice) => choice == ChooseSheet.Road && GarageView.RoadNames.Contains(path) ? path : up + path);
    }
}
