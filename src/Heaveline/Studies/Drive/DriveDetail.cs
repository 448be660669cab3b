using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;

namespace Heaveline.Studies;

/// <summary>
/// What else a car that is told by a drive tells: gentler and harder bumps apart, speeds that suit, roughness along the road. Each is worked out when
/// it is first asked for: together they take about as long as the car.
/// </summary>
public sealed class DriveDetail
{
    private readonly Lazy<MotionHalves> halves;
    private readonly Lazy<DriveSpeeds> speeds;
    private readonly Lazy<DriveRoughness> roughness;

    private DriveDetail(Drive drive, Trust trust, DriveEvents events, CarFromDrive car)
    {
        halves = new(() => MotionHalves.Of(DriveWindows.Of(drive, events, trust), car));
        speeds = new(() => DriveSpeeds.Of(events, car));
        roughness = new(() => DriveRoughness.Of(drive, events, trust, car));
    }

    /// <summary>The car of the gentler and of the harder bumps.</summary>
    public MotionHalves Halves => halves.Value;

    /// <summary>The speeds that suit.</summary>
    public DriveSpeeds Speeds => speeds.Value;

    /// <summary>The roughness along the drive.</summary>
    public DriveRoughness Roughness => roughness.Value;

    /// <summary>What is told; null where the car is not.</summary>
    internal static DriveDetail? Of(Drive drive, Trust trust, DriveEvents? events, CarFromDrive? car) =>
        events is not null && car is { IsBelieved: true, Known: not null } ? new(drive, trust, events, car) : null;
}
