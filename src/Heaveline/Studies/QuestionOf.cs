using Heaveline.Pieces;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A question with the way to read it and the way to answer it.</summary>
/// <typeparam name="TAsked">What is asked, checked.</typeparam>
/// <typeparam name="TAnswer">What comes of it.</typeparam>
public sealed record Question<TAsked, TAnswer> : Question
    where TAsked : class
    where TAnswer : class
{
    /// <summary>Reads words; null where it has objected to any.</summary>
    public required Func<AskedReader, TAsked?> Reads { get; init; }

    /// <summary>Answers what is asked.</summary>
    public required Func<TAsked, StudyRun, TAnswer> Answers { get; init; }

    /// <summary>Does pieces of the work that what is asked takes; null where it does not come in pieces.</summary>
    public Func<TAsked, IPieceDoer>? Pieces { get; init; }

    /// <summary>Why what is asked cannot go into one CSV, a sentence; null where it can.</summary>
    public Func<TAsked, string?> CsvRefusal { get; init; } = _ => null;

    /// <summary>Reads what was given. Anything wrong gives objections, never an exception.</summary>
    /// <param name="given">The words by choice.</param>
    /// <param name="finder">Finds cars and roads by their names.</param>
    public AskedReading<TAsked> Read(Given given, IFinder finder)
    {
        var reader = new AskedReader(given, finder);
        TAsked? asked = null;
        try
        {
            asked = Reads(reader);
        }
        catch (RefusedValueException refusal)
        {
            reader.Object("", $"refused: {refusal.Message}", isUsage: false);
        }

        return new AskedReading<TAsked>
        {
            Asked = reader.IsRefused ? null : asked, Objections = reader.Objections, Key = reader.Key, Inputs = reader.AllInputs,
        };
    }
}
