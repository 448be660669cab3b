namespace Heaveline.Quantities;

/// <summary>Why a text is not the quantity that is wanted, and where.</summary>
/// <param name="Start">First character of the offending part, counted from 0.</param>
/// <param name="Length">Characters of the offending part, at least 1 unless the text is empty.</param>
/// <param name="Message">What is wrong, one sentence with its full stop.</param>
/// <param name="Advice">What to write instead, one sentence.</param>
public sealed record QuantityRefusal(int Start, int Length, string Message, string Advice);
