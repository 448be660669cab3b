using Heaveline.Drives;

namespace Heaveline.Studies;

/// <summary>What is asked of a drive: what its log is good for.</summary>
public sealed record DriveAsked
{
    /// <summary>The log.</summary>
    public required Log Log { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }
}
