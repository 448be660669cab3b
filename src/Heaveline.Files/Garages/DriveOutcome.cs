namespace Heaveline.Files.Garages;

/// <summary>What came of bringing a file of a log into the garage.</summary>
/// <param name="Drive">The folder of the drive that it is in; null where it was not taken.</param>
/// <param name="Message">Why it was not taken, one sentence with its full stop; empty when it was.</param>
/// <param name="Advice">What to do; empty when it was taken.</param>
public sealed record DriveOutcome(string? Drive, string Message, string Advice)
{
    internal static DriveOutcome Refused(string message, string advice) => new(null, message, advice);
}
