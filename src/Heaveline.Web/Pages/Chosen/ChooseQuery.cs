using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>What is chosen among, as the page's address says it.</summary>
internal static class ChooseQuery
{
    /// <summary>A choice of the question by its name.</summary>
    public static Choice Of(string name) => ChooseStudy.Question.Choices.Single(choice => choice.Name == name);

    /// <summary>The words, with all lists of the garage where none is named.</summary>
    /// <param name="given">As the address says.</param>
    /// <param name="garage">The garage.</param>
    public static Given Given(Given given, GarageView garage)
    {
        var lists = Of("parts");
        return given.All(lists).Count > 0
            ? given
            : new Given(
            [
                .. ChooseStudy.Question.Choices.Where(choice => choice != lists)
                    .SelectMany(choice => given.All(choice).Select(w => (choice.Name, w))),
                .. garage.PartsLists.Where(list => !list.IsRefused).Select(list => (lists.Name, (string?)list.Name)),
            ]);
    }
}
