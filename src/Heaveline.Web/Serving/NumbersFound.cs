namespace Heaveline.Web.Serving;

/// <summary>What a search by numbers has found.</summary>
/// <param name="Words">The words that stand beside the numbers, with blanks between.</param>
/// <param name="Files">The numbers that were asked for of every car that keeps them, in words, by the file's name.</param>
/// <param name="Problem">What is wrong with a number as it is asked for; empty for nothing.</param>
/// <param name="Remark">What stood in the way of keeping what was read; empty for nothing.</param>
public sealed record NumbersFound(string Words, IReadOnlyDictionary<string, string> Files, string Problem, string Remark);
