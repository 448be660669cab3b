namespace Heaveline.Drives.Identification;

/// <summary>A refusal in words.</summary>
/// <param name="Kind">By which rule.</param>
/// <param name="Says">What the drive does not tell and why.</param>
/// <param name="WouldTell">The one drive that would; blank where none is known.</param>
public sealed record CarRefusal(RefusalKind Kind, string Says, string WouldTell);
