using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>
/// A drive along Larch Lane as it is read: its sites named and what is no site rejected, as the driver would who knows the lane.
/// </summary>
internal sealed class LaneReading
{
    public const double Wheelbase = 2.70;

    /// <summary>A drive as it is read.</summary>
    /// <param name="lane">The drive.</param>
    /// <param name="wheelbase">The wheelbase that is given, m.</param>
    public LaneReading(LarchLane lane, double wheelbase = Wheelbase)
    {
        Lane = lane;
        Drive = Drive.Of(lane.Log);
        var trust = Trust.Of(Drive);
        var settings = new EventSettings { Wheelbase = wheelbase, Phone = new PhonePlace { BehindFrontAxle = LarchLane.Pose.BehindFrontAxle } };
        Found = DriveEvents.Of(Drive, trust, settings);
        Events = DriveEvents.Of(Drive, trust, LaneNaming.Of(settings, Found, lane.Plan.Crossings.Select(c => (c.Site, c.Time))));
        Windows = [.. DriveWindows.Of(Drive, Events, trust)];
        var body = lane.Driven.Model.Body;
        Car = CarIdentification.Of(Windows, new IdentificationKnown
        {
            Wheelbase = wheelbase,
            FrontShare = 1.0 - (body.BehindFrontAxle / Wheelbase),
            FrontShareSpread = 0.01,
            PhoneBehindFrontAxle = LarchLane.Pose.BehindFrontAxle,
            PhoneSpread = 0.05,
            HumpLengths = DriveWindows.Humps(Events),
        });
    }

    private static readonly Lazy<LaneReading> Built = new(() => new(LarchLane.Before));
    private static readonly Lazy<LaneReading> Cured = new(() => new(LarchLane.After));
    private static readonly Lazy<LaneReading> Again = new(() => new(LarchLane.NoChange));

    public static LaneReading Before => Built.Value;

    public static LaneReading After => Cured.Value;

    public static LaneReading NoChange => Again.Value;

    public LarchLane Lane { get; }

    public Drive Drive { get; }

    /// <summary>What is found before anything is named.</summary>
    public DriveEvents Found { get; }

    public DriveEvents Events { get; }

    public DriveWindow[] Windows { get; }

    public CarFromDrive Car { get; }

    /// <summary>The planted crossing of an event.</summary>
    public LaneCrossing Of(int number)
    {
        var onset = Events.Events.Single(e => e.Number == number).Onset;
        return Lane.Plan.Crossings.MinBy(c => Math.Abs(c.Time - onset))!;
    }
}
