using Heaveline.Drives.Events;

namespace Heaveline.Drives.Comparison;

/// <summary>One bump as two drives met it.</summary>
/// <param name="Name">Its name in the comparison.</param>
/// <param name="Before">The site of the drive before.</param>
/// <param name="After">The site of the drive after.</param>
/// <param name="Basis">By what they are taken for the same.</param>
public sealed record SiteMatch(string Name, DriveSite Before, DriveSite After, SiteBasis Basis);
