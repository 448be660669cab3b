namespace Heaveline.Recording;

/// <summary>A question to a curve of a crossing.</summary>
/// <param name="Kind">What is asked: which of the folds answers it.</param>
/// <param name="Signal">What the curve is of: its place among the signals.</param>
/// <param name="Apart">How many samples apart two values are that are compared.</param>
internal sealed record LiveQuestion(int Kind, int Signal, int Apart);
