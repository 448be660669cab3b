namespace Heaveline.Drives;

/// <summary>What several decisions of the user say together; of two about one thing the last counts.</summary>
public static class Overrulings
{
    /// <summary>The word that is taken for something; null for none.</summary>
    public static string? Word(this IEnumerable<Overruling> all, string about) =>
        all.LastOrDefault(o => o.About == about && o.Word.Length > 0)?.Word;

    /// <summary>The amount that is taken, SI, with its half-width; null for none.</summary>
    public static (double Value, double HalfWidth)? Amount(this IEnumerable<Overruling> all, string about) =>
        all.LastOrDefault(o => o.About == about && o.Amount is not null) is { Amount: { } value } said ? (value, said.HalfWidth) : null;
}
