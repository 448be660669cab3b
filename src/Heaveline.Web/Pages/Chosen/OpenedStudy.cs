using System.Collections.Immutable;
using Heaveline.Files.Garages;
using Heaveline.Parts;
using Heaveline.Studies;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>A study's file that the page of the choice was opened with, as it lay on the disk at a moment.</summary>
internal sealed record OpenedStudy
{
    // What is asked, in words, by the name of its choice.
    private static readonly ImmutableArray<(string Choice, string Words)> Called =
    [
        ("car", "the car"), ("parts", "the lists"), ("open", "the places whose part may change"), ("keep", "the places that stay"),
        ("use", "what is driven over"), ("load", "the loads"), ("wish", "the wishes"), ("with", "the limits"), ("budget", "the budget"),
        ("draws", "the draws"), ("seed", "the seed"),
    ];

    /// <summary>Its file's name in the garage.</summary>
    public required string File { get; init; }

    /// <summary>What it is called; its file's name where nobody can read it.</summary>
    public required string Title { get; init; }

    /// <summary>Its text; null where it cannot be read.</summary>
    public required GarageText Text { get; init; }

    /// <summary>What it asks, its files named as the pages name them; null where it is refused.</summary>
    public required ChooseSheet? Sheet { get; init; }

    /// <summary>Why it cannot be asked or written, with its advice; blank where it can.</summary>
    public required string Problem { get; init; }

    /// <summary>Where it is opened as it is now; null where it is refused.</summary>
    public required string? Address { get; init; }

    /// <summary>Looks at it.</summary>
    /// <param name="file">Its file's name in the garage.</param>
    /// <param name="garage">The garage.</param>
    public static OpenedStudy Of(string file, GarageView garage)
    {
        var found = ((IFinder)garage).Study(file);
        return new OpenedStudy
        {
            File = file,
            Title = found.Value?.Name ?? file,
            Text = garage.Garage.Read(file),
            Sheet = found.Value,
            Problem = found.Value is null ? found.Refusal : "",
            Address = StudyLink.Of(file, garage),
        };
    }

    /// <summary>The names of the choices of which a page asks otherwise than the file: what is not said is asked as usual.</summary>
    /// <param name="given">What the page asks.</param>
    /// <param name="garage">The garage.</param>
    public IReadOnlyList<string> Changed(Given given, GarageView garage)
    {
        if (Sheet is null)
        {
            return [];
        }

        var own = new Given(Sheet.Lines.Select(line => (line.Choice, (string?)line.Words)));
        return
        [
            .. ChooseStudy.Question.Choices.Where(choice => !Whole(choice, own, garage).SequenceEqual(Whole(choice, given, garage)))
                .Select(choice => choice.Name),
        ];
    }

    /// <summary>Choices in words: "the budget and the loads".</summary>
    /// <param name="choices">Their names.</param>
    public static string InWords(IReadOnlyList<string> choices)
    {
        string[] words = [.. Called.Where(one => choices.Contains(one.Choice)).Select(one => one.Words)];
        return words.Length < 2 ? string.Concat(words) : $"{string.Join(", ", words[..^1])} and {words[^1]}";
    }

    // The order of the lines asks nothing.
    private static IEnumerable<string> Whole(Choice choice, Given given, GarageView garage) =>
        (given.All(choice) is { Count: > 0 } said ? said : Usual(choice.Name, given, garage))
            .Select(words => words.Trim()).Order(StringComparer.Ordinal);

    private static IReadOnlyList<string> Usual(string choice, Given given, GarageView garage) => choice switch
    {
        "parts" => ChooseQuery.Usual(garage),
        "open" => [.. ChooseAsked.Usual.Select(place => place.Name()).Except(given.All(ChooseQuery.Of("keep")).Select(words => words.Trim()))],
        "use" => ChooseStudy.UsualUse,
        "load" => given.Of(Choices.Car) is { } car ? ChooseQuery.OwnLoads(garage.Car(car)?.Value) : [],
        _ => ChooseQuery.Of(choice).Usual is { } usual ? [usual] : [],
    };
}
