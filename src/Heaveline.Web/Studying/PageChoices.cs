using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.WebUtilities;

namespace Heaveline.Web.Studying;

/// <summary>What a page's address chooses.</summary>
/// <param name="Offered">What can be chosen there.</param>
/// <param name="Typed">As it stands in the address.</param>
/// <param name="Given">
/// The same as a study reads it: the garage's usual car where none is named, numbers with the unit that stands beside their box.
/// </param>
public sealed record PageChoices(IReadOnlyList<Choice> Offered, Given Typed, Given Given)
{
    /// <summary>The query of the page and of its downloads, with its question mark; what is as usual is left out.</summary>
    public string Query => QueryOf(Offered);

    /// <summary>The query of a part of what can be chosen.</summary>
    public string QueryOf(IEnumerable<Choice> choices) =>
        PageAddress.Query(choices.SelectMany(c => Typed.All(c).Select(words => (c.Name, (string?)words))));

    /// <summary>Reads an address.</summary>
    /// <param name="query">Its query, with or without the question mark.</param>
    /// <param name="offered">What can be chosen there.</param>
    /// <param name="garage">Where cars and roads are.</param>
    internal static PageChoices Of(string query, IReadOnlyList<Choice> offered, GarageView garage)
    {
        var said = QueryHelpers.ParseQuery(query);
        // Of a key that stands twice the last is read, as everywhere in an address; a second car is the one beside.
        var typed = new Given(offered.SelectMany(c => said.TryGetValue(c.Name, out var words)
            ? (c.IsRepeated || c.Name == Choices.Car.Name ? words : words.TakeLast(1)).Select(w => (c.Name, w))
            : []));
        var given = new Given(offered.SelectMany(c => typed.All(c).Select(w => (c.Name, (string?)Whole(c, w)))));
        // In an empty garage any name does: there is none to be found.
        var car = typed.Of(Choices.Car) is null ? given.With(Choices.Car, garage.UsualCar ?? "none") : given;
        return new PageChoices(offered, typed, car);
    }

    /// <summary>
    /// Words as a study reads them: a number in a box of speeds is one in km/h, a comma in one of numbers a
    /// decimal point, a fraction a decimal number.
    /// </summary>
    public static string Whole(Choice choice, string words) => choice.Kind switch
    {
        ChoiceKind.Speed => QuantityText.Whole(words, "km/h"),
        ChoiceKind.Number => QuantityText.Whole(words, "").Replace(',', '.'),
        _ => words,
    };

    /// <summary>A number as it stands in its box: as typed, or the usual one without its unit.</summary>
    public string InBox(Choice choice) => Typed.Of(choice) ?? (choice.Usual ?? "").Split(' ')[0];
}
