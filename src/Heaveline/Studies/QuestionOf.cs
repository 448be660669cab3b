using Heaveline.Answers;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A question with the way to read it and the way to answer it.</summary>
/// <typeparam name="TAsked">What is asked, checked.</typeparam>
/// <typeparam name="TAnswer">What comes of it.</typeparam>
public sealed record Question<TAsked, TAnswer> : Question
    where TAsked : class
    where TAnswer : Answer
{
    /// <summary>Reads words; null where it has objected to any.</summary>
    public required Func<AskedReader, TAsked?> Reads { get; init; }

    /// <summary>Answers what is asked.</summary>
    public required Func<TAsked, StudyRun, TAnswer> Answers { get; init; }

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

        return new AskedReading<TAsked> { Asked = reader.IsRefused ? null : asked, Objections = reader.Objections, Key = reader.Key };
    }
}
