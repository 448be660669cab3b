namespace Heaveline.Drives.Events;

/// <summary>Something in a drive that may be a bump.</summary>
/// <param name="Seen">When it stands out most, s since the log's start.</param>
/// <param name="Score">By how many times it stands above what is usual; 0 where a user added it.</param>
/// <param name="ByHand">Whether a user added it.</param>
internal readonly record struct Candidate(double Seen, double Score, bool ByHand);
