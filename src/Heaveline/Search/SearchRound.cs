namespace Heaveline.Search;

/// <summary>One round of a search: what was fitted, and what was driven by it.</summary>
/// <param name="Fitted">To how many setups the guess was fitted.</param>
/// <param name="Margin">How near the guessed front a setup was driven (–).</param>
/// <param name="Driven">How many were driven.</param>
/// <param name="Residual">By how much the guess was off at these, root mean square (–).</param>
internal sealed record SearchRound(int Fitted, double Margin, int Driven, double Residual);
