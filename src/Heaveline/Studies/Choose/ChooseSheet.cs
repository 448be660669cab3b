using System.Collections.Immutable;

namespace Heaveline.Studies;

/// <summary>A study as its file asks it: for every choice the words that a command line would have for it.</summary>
public sealed record ChooseSheet
{
    /// <summary>Name of the choice whose lines name roads.</summary>
    public const string Road = "use";

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>Its file, as it was named.</summary>
    public required string File { get; init; }

    /// <summary>Anything a reader should know.</summary>
    public string Note { get; init; } = "";

    /// <summary>The lines, in the order of the choices.</summary>
    public required ImmutableArray<ChooseLine> Lines { get; init; }

    /// <summary>The same with other names for the car, the lists and the roads.</summary>
    /// <param name="nameOf">The other name of a file, from its own and the choice that it stands for.</param>
    public ChooseSheet Named(Func<string, string, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(nameOf);
        return this with { Lines = [.. Lines.Select(line => line with { Words = Renamed(line, nameOf) })] };
    }

    /// <summary>What is asked with words beside the file: they take the place of all that it says of the same choice.</summary>
    /// <param name="given">The words, the study's own name among them.</param>
    internal Given Beside(Given given)
    {
        HashSet<string> said =
            [.. ChooseChoices.All.Where(choice => choice.Name != Choices.Car.Name && given.All(choice).Count > 0).Select(choice => choice.Name)];
        return new Given(ChooseChoices.All.SelectMany(choice => said.Contains(choice.Name)
            ? given.All(choice).Select(words => (choice.Name, (string?)words))
            : Lines.Where(line => line.Choice == choice.Name).Select(line => (choice.Name, (string?)line.Words))));
    }

    /// <summary>The line of the file that a sentence about a choice is about; null where the file says nothing of it.</summary>
    /// <param name="choice">Name of the choice.</param>
    /// <param name="sentence">What is said.</param>
    /// <param name="given">The words that are read: those of a choice that was given beside the file are not its own.</param>
    internal ChooseLine? LineOf(string choice, string sentence, Given given)
    {
        var lines = Lines.Where(line => line.Choice == choice && given.Has(choice, line.Words)).ToArray();
        return lines.FirstOrDefault(line => sentence.Contains($"'{line.Words}'", StringComparison.Ordinal))
            ?? lines.FirstOrDefault(line => CommaList.Of(line.Words.Replace(';', ',').Replace(':', ','))
                .Any(word => sentence.Contains($"'{word}'", StringComparison.Ordinal)))
            ?? lines.FirstOrDefault(line => sentence.Contains(line.Words, StringComparison.Ordinal))
            ?? lines.FirstOrDefault();
    }

    private static string Renamed(ChooseLine line, Func<string, string, string> nameOf) =>
        line.Choice == Choices.Car.Name || line.Choice == ChooseChoices.Lists.Name ? nameOf(line.Words, line.Choice)
        : line.Choice == ChooseChoices.Use.Name && ChooseUseLine.Read(line.Words) is { Letter: null } use
            ? (use with { Name = nameOf(use.Name, line.Choice) }).ToString()
        : line.Words;
}
