using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>
/// What else a car that is told by a drive tells: gentler and harder bumps apart, speeds that suit, roughness along the road. Each is worked out when
/// it is first asked for: together they take about as long as the car.
/// </summary>
public sealed class DriveDetail
{
    // Whoever waits for another to work something out looks this often whether it is stopped.
    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(50);

    private readonly Lock onlyHalves = new();
    private readonly Lock onlySpeeds = new();
    private readonly Lock onlyRoughness = new();
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

    /// <summary>One of them, in a table, in sentences and, where there is one, in a figure.</summary>
    /// <param name="kind">Which.</param>
    /// <param name="stop">Stops it; it is begun anew when it is next asked for.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public DriveDetailPart Of(DriveDetailKind kind, CancellationToken stop = default)
    {
        switch (kind)
        {
            case DriveDetailKind.Halves:
                var apart = HalvesOf(stop);
                var what = car.Windows.Any(w => w.Site is not null) ? "bumps" : "stretches";
                return new(MotionHalvesWords.Table(apart), [.. MotionHalvesWords.Of(apart, what)], null);
            case DriveDetailKind.Speeds:
                var suiting = SpeedsOf(stop);
                return new(SiteSpeedTable.Of(suiting), [.. SiteSpeedTable.Said(suiting)], null);
            case DriveDetailKind.Roughness:
                var along = RoughnessOf(stop);
                var figure = along.Stretches.Any(s => s.IsTold) ? RoughnessFigure.Of(along) : null;
                return new(RoughnessTable.Of(along), [.. RoughnessTable.Said(along)], figure);
            default:
                throw new ArgumentOutOfRangeException(nameof(kind));
        }
    }

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
    internal DriveRoughness RoughnessOf(CancellationToken stop) =>
        Once(onlyRoughness, ref roughness, () => DriveRoughness.Of(drive, events, missed, trust, car, stop), stop);

    private MotionHalves HalvesOf(CancellationToken stop) =>
        Once(onlyHalves, ref halves, () => MotionHalves.Of(DriveWindows.Of(drive, events, trust), car, stop), stop);

    private DriveSpeeds SpeedsOf(CancellationToken stop) => Once(onlySpeeds, ref speeds, () => DriveSpeeds.Of(events, car, stop), stop);

    private static T Once<T>(Lock only, ref T? known, Func<T> work, CancellationToken stop)
        where T : class
    {
        while (!only.TryEnter(Glance))
        {
            stop.ThrowIfCancellationRequested();
        }

        try
        {
            return known ??= work();
        }
        finally
        {
            only.Exit();
        }
    }
}
