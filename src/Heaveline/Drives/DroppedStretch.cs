namespace Heaveline.Drives;

/// <summary>A part of a drive that nothing is read from.</summary>
/// <param name="Part">Where it lies, s since the log's start.</param>
/// <param name="Reason">Why, in a few words.</param>
public sealed record DroppedStretch(Stretch Part, string Reason);
