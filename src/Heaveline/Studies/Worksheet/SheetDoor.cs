using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A worksheet as a page opens it at the field where its number is wanted: the same study as that of the command.</summary>
/// <param name="Word">Its word ("weigh").</param>
/// <param name="Title">What is measured, in words.</param>
/// <param name="Choices">The readings.</param>
/// <param name="Work">From the readings to the sheet's answer, or all that is wrong with them.</param>
public sealed record SheetDoor(
    string Word, string Title, IReadOnlyList<Choice> Choices, Func<Given, IFinder, (SheetAnswer? Answer, IReadOnlyList<Objection> Objections)> Work)
{
    /// <summary>Every worksheet, in the order of the commands.</summary>
    public static IReadOnlyList<SheetDoor> All { get; } =
    [
        Of("Four scales under four wheels", WeighStudy.Question), Of("One axle lifted", TiltStudy.Question),
        Of("The spring pressed on a scale", SpringStudy.Question), Of("Swings counted", BounceStudy.Question),
        Of("Swings that die after a push", DecayStudy.Question),
        Of("The wheel jacked through its travel", RatioStudy.Question),
        Of("The wheel raised and lowered on a jack that stands on a scale", WheelRateStudy.Question),
    ];

    /// <summary>The worksheet of a word.</summary>
    public static SheetDoor Named(string word) => All.First(door => door.Word == word);

    private static SheetDoor Of<TAsked>(string title, Question<TAsked, SheetAnswer> question)
        where TAsked : SheetAsked => new(question.Word, title, question.Choices, (given, finder) =>
        {
            TAsked? asked = null;
            try
            {
                var reading = question.Read(given, finder);
                asked = reading.Asked;
                return asked is not null ? (question.Answers(asked, StudyRun.Plain), []) : (null, reading.Objections);
            }
            catch (RefusedValueException refused)
            {
                // Readings that stand well alone may not fit together.
                var cell = asked?.Typed.Of(refused);
                return (null, [new Objection(cell?.Choice.Name ?? "", refused.Message, IsUsage: false) { Place = cell?.Place }]);
            }
        });
}
