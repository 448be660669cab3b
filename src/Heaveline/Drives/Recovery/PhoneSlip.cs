namespace Heaveline.Drives.Recovery;

/// <summary>A phone that slips in its place within half a second, and stays so.</summary>
/// <param name="At">When it begins, s since the log's start.</param>
/// <param name="Angle">By what it turns about the car's forward axis, rad.</param>
public readonly record struct PhoneSlip(double At, double Angle)
{
    /// <summary>How long the slipping takes, s.</summary>
    public const double Lasts = 0.5;
}
