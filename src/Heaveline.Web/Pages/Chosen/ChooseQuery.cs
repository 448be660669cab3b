using Heaveline.Cars;
using Heaveline.Studies;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>What is chosen among, as the page's address says it.</summary>
internal static class ChooseQuery
{
    /// <summary>The study's file that the page was opened with: it goes along, that what is changed can be written back to it.</summary>
    public static readonly Choice Study = new()
    {
        Name = StudyLink.Key,
        Kind = ChoiceKind.Word,
        Says = "The file of a study that was opened; what it asks stands in the address beside it.",
        HelpName = "FILE",
    };

    /// <summary>What the page's address may say.</summary>
    public static IReadOnlyList<Choice> All { get; } = [.. ChooseStudy.Question.Choices, Study];

    /// <summary>The loads that count where none is named: every one of the car's file, or it empty.</summary>
    /// <param name="car">The car; null for none.</param>
    public static string[] OwnLoads(Car? car) =>
        car is { LoadStates.Count: > 0 } ? [.. car.LoadStates.Select(load => load.Name)] : [LoadState.Reference.Name];

    /// <summary>A choice of the question by its name.</summary>
    public static Choice Of(string name) => ChooseStudy.Question.Choices.Single(choice => choice.Name == name);

    /// <summary>
    /// The lists of the garage that are chosen among where none is named: all that can be read, or of several currencies those of the first, since
    /// amounts of two have no sum. A list without prices stands beside any.
    /// </summary>
    /// <param name="garage">The garage.</param>
    public static IReadOnlyList<string> Usual(GarageView garage)
    {
        var lists = garage.PartsLists.Where(list => !list.IsRefused).Select(list => (list.Name, Currency: Currency(garage, list.Name))).ToArray();
        var first = lists.Select(list => list.Currency).FirstOrDefault(currency => currency.Length > 0);
        return [.. lists.Where(list => list.Currency.Length == 0 || list.Currency == first).Select(list => list.Name)];
    }

    /// <summary>The currency of a list's prices; blank without any.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="list">The list's name there.</param>
    public static string Currency(GarageView garage, string list) =>
        ((IFinder)garage).Parts(list).Value?.Parts.Select(part => part.Price?.Currency)
            .FirstOrDefault(currency => !string.IsNullOrEmpty(currency)) ?? "";

    /// <summary>
    /// What an address asks that names a study and no car: all that the study asks, but for what the address says otherwise. Null where it stands as
    /// it is. Without it another car's answer would stand under the study's name, and be saved in its place.
    /// </summary>
    /// <param name="query">As it stands in the address.</param>
    /// <param name="garage">The garage.</param>
    public static string? Filled(string query, GarageView garage)
    {
        var typed = PageChoices.Of(query, All, garage).Typed;
        if (typed.Of(Study) is not { } file || typed.Of(Choices.Car) is not null || ((IFinder)garage).Study(file).Value is not { } sheet
            || sheet.Lines.All(line => line.Choice != Choices.Car.Name))
        {
            return null;
        }

        return PageAddress.Query(All.SelectMany(choice => typed.All(choice).Count > 0
            ? typed.All(choice).Select(words => (choice.Name, (string?)words))
            : sheet.Lines.Where(line => line.Choice == choice.Name).Select(line => (choice.Name, (string?)line.Words))));
    }

    /// <summary>The words, with the usual lists of the garage where none is named.</summary>
    /// <param name="given">As the address says.</param>
    /// <param name="garage">The garage.</param>
    public static Given Given(Given given, GarageView garage)
    {
        var lists = Of("parts");
        return new Given(
        [
            .. ChooseStudy.Question.Choices.SelectMany(choice => given.All(choice).Select(words => (choice.Name, (string?)words))),
            .. given.All(lists).Count > 0 ? [] : Usual(garage).Select(name => (lists.Name, (string?)name)),
        ]);
    }
}
