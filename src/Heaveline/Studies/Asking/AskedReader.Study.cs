using Heaveline.Answers;

namespace Heaveline.Studies;

/// <content>Studies: files that ask a question in the words of its choices.</content>
public sealed partial class AskedReader
{
    private ChooseSheet? study;

    /// <summary>
    /// Opens the file of a study where one is named: from then on what it says stands behind the words that were given, which take the place of its
    /// own.
    /// </summary>
    /// <param name="choice">The choice that names a car or a study.</param>
    /// <returns>Whether there is anything to go on with: no file of a study, or one that can be read.</returns>
    internal bool OpenStudy(Choice choice)
    {
        if (given.Of(choice) is not { } name || !finder.IsStudy(name))
        {
            return true;
        }

        if (Sought(choice, finder.Study(name)).Value is not { } sheet)
        {
            return false;
        }

        (given, study) = (sheet.Beside(given), sheet);
        return true;
    }

    /// <summary>Whether what a choice names is there and cannot be read.</summary>
    internal bool IsUnreadable(Choice choice) => objections.Any(o => o.Choice == choice.Name && !o.IsMissing && !o.IsUsage);

    /// <summary>The files of everything found so far, each once.</summary>
    internal IReadOnlyList<InputText> AllInputs => [.. files.SelectMany(f => f.Inputs).DistinctBy(input => input.Name)];

    /// <summary>What another question asks in its own words; null where they are objected to, under the choice that they stand for.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="question">The other question.</param>
    /// <param name="words">Its words.</param>
    internal TAsked? Asked<TAsked, TAnswer>(Choice choice, Question<TAsked, TAnswer> question, Given words)
        where TAsked : class
        where TAnswer : class
    {
        var reading = question.Read(words, finder);
        objections.AddRange(reading.Objections.Select(
            objection => objection with { Choice = choice.Name, Sentence = objection.Placed, Written = null }));
        notes.AddRange([choice.Name, reading.Key]);
        files.Add((choice.Name, reading.Inputs));
        return reading.Asked;
    }

    // What a file says is no usage of a command, and has its place.
    private void Object(Objection objection) => objections.Add(study?.LineOf(objection.Choice, objection.Sentence, given) is { } line
        ? objection with { Written = (study.File, line), IsUsage = false }
        : objection);
}
