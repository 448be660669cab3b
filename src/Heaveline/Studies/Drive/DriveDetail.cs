using System.Collections.Immutable;
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
    private readonly Lock only = new();
    private readonly Drive drive;
    private readonly Trust trust;
    private readonly DriveEvents events;
    private readonly ImmutableArray<MissedPass> missed;
    private readonly CarFromDrive car;
    private MotionHalves? halves;
    private DriveSpeeds? speeds;
    private DriveRoughness? roughness;

    private DriveDetail(Drive drive, Trust trust, DriveEvents events, ImmutableArray<MissedPass> missed, CarFromDrive car) =>
        (this.drive, this.trust, this.events, this.missed, this.car) = (drive, trust, events, missed, car);

    /// <summary>The car of the gentler and of the harder bumps.</summary>
    public MotionHalves Halves => HalvesOf(CancellationToken.None);

    /// <summary>The speeds that suit.</summary>
    public DriveSpeeds Speeds => SpeedsOf(CancellationToken.None);

    /// <summary>The roughness along the drive.</summary>
    public DriveRoughness Roughness => RoughnessOf(CancellationToken.None);

    /// <summary>What is told; null where the car is not.</summary>
    internal static DriveDetail? Of(Drive drive, Trust trust, DriveEvents? events, ImmutableArray<MissedPass> missed, CarFromDrive? car) =>
        events is not null && car is { IsBelieved: true, Known: not null } ? new(drive, trust, events, missed, car) : null;

    /// <summary>Works all of it out, once; one that is stopped is begun anew when it is next asked for.</summary>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal void WorkOut(CancellationToken stop)
    {
        HalvesOf(stop);
        SpeedsOf(stop);
        RoughnessOf(stop);
    }

    /// <summary>The roughness along the drive.</summary>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal DriveRoughness RoughnessOf(CancellationToken stop)
    {
        lock (only)
        {
            return roughness ??= DriveRoughness.Of(drive, events, missed, trust, car, stop);
        }
    }

    private MotionHalves HalvesOf(CancellationToken stop)
    {
        lock (only)
        {
            return halves ??= MotionHalves.Of(DriveWindows.Of(drive, events, trust), car, stop);
        }
    }

    private DriveSpeeds SpeedsOf(CancellationToken stop)
    {
        lock (only)
        {
            return speeds ??= DriveSpeeds.Of(events, car, stop);
        }
    }
}
