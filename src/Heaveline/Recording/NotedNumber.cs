namespace Heaveline.Recording;

/// <summary>
/// A number that a definition reckons with: known, or one that the record which this thread writes works out when it is run. One definition
/// serves both.
/// </summary>
internal readonly struct NotedNumber
{
    private readonly double known;

    // One above the line; 0 where it is known.
    private readonly int noted;

    private NotedNumber(double known, int noted) => (this.known, this.noted) = (known, noted);

    /// <summary>Whether it is worked out when the record is run.</summary>
    public bool IsNoted => noted > 0;

    /// <summary>It in the record.</summary>
    public RecordLane Lane => new(IsNoted ? noted - 1 : Record.Writing.Constant(known, known));

    /// <summary>What a line of the record works out.</summary>
    public static NotedNumber Of(RecordLane lane) => new(0.0, 1 + lane.Line);

    public static implicit operator NotedNumber(double known) => new(known, 0);

    /// <summary>Its value.</summary>
    /// <exception cref="NotSupportedException">It has none yet: what asks for it cannot be recorded.</exception>
    public static implicit operator double(NotedNumber number) =>
        number.IsNoted ? throw new NotSupportedException("A number that a record works out has no value yet.") : number.known;

    public static NotedNumber operator +(NotedNumber a, NotedNumber b) => AreKnown(a, b) ? a.known + b.known : Of(a.Lane + b.Lane);

    public static NotedNumber operator -(NotedNumber a, NotedNumber b) => AreKnown(a, b) ? a.known - b.known : Of(a.Lane - b.Lane);

    public static NotedNumber operator *(NotedNumber a, NotedNumber b) => AreKnown(a, b) ? a.known * b.known : Of(a.Lane * b.Lane);

    public static NotedNumber operator /(NotedNumber a, NotedNumber b) => AreKnown(a, b) ? a.known / b.known : Of(a.Lane / b.Lane);

    public static NotedNumber operator -(NotedNumber a) => a.IsNoted ? Of(-a.Lane) : -a.known;

    /// <summary>The larger.</summary>
    public static NotedNumber Max(NotedNumber a, NotedNumber b) => AreKnown(a, b) ? Math.Max(a.known, b.known) : Of(RecordLane.Max(a.Lane, b.Lane));

    /// <summary>The smaller.</summary>
    public static NotedNumber Min(NotedNumber a, NotedNumber b) => AreKnown(a, b) ? Math.Min(a.known, b.known) : Of(RecordLane.Min(a.Lane, b.Lane));

    /// <summary>Its size.</summary>
    public static NotedNumber Abs(NotedNumber a) => a.IsNoted ? Of(RecordLane.Max(a.Lane, -a.Lane)) : Math.Abs(a.known);

    /// <summary>Square root of what is not below zero.</summary>
    public static NotedNumber Sqrt(NotedNumber a) => a.IsNoted ? Of(RecordLane.Sqrt(a.Lane)) : Math.Sqrt(a.known);

    /// <summary>Where a ≤ limit, then; elsewhere, otherwise.</summary>
    public static NotedNumber WhereAtMost(NotedNumber a, NotedNumber limit, NotedNumber then, NotedNumber otherwise) => AreKnown(a, limit)
        ? a.known <= limit.known ? then : otherwise
        : Of(RecordLane.WhereAtMost(a.Lane, limit.Lane, then.Lane, otherwise.Lane));

    /// <summary>The least of some; not a number where one is none, and of nothing.</summary>
    public static NotedNumber Least(IEnumerable<NotedNumber> of) => Folded(of, known => known.Min(), Min, isNoneForGood: true);

    /// <summary>The greatest of those that are numbers; not a number of nothing.</summary>
    public static NotedNumber Greatest(IEnumerable<NotedNumber> of) => Folded(of, known => known.Max(), Max, isNoneForGood: false);

    private static bool AreKnown(NotedNumber a, NotedNumber b) => !a.IsNoted && !b.IsNoted;

    private static NotedNumber Folded(
        IEnumerable<NotedNumber> of, Func<IEnumerable<double>, double> known, Func<NotedNumber, NotedNumber, NotedNumber> fold, bool isNoneForGood)
    {
        NotedNumber[] all = [.. of];
        if (all.Length == 0)
        {
            return double.NaN;
        }

        if (!Array.Exists(all, number => number.IsNoted))
        {
            return known(all.Select(number => number.known));
        }

        NotedNumber[] numbers = [.. all.Where(number => number.IsNoted || !double.IsNaN(number.known))];
        return isNoneForGood && numbers.Length < all.Length ? double.NaN : numbers.Aggregate(fold);
    }
}
