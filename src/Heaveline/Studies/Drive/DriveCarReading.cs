using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Studies;

/// <summary>From a drive and its bumps to the car.</summary>
internal static class DriveCarReading
{
    // Standard deviations of the front share: of a car file that was weighed, and of a phone's place at least, m.
    private const double FileShare = 0.02;
    private const double PhoneAtLeast = 0.03;

    /// <summary>The car; null where the log does not bear it.</summary>
    /// <param name="settings">What is known of the drive.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="beside">The car file's numbers; null: none.</param>
    /// <param name="stop">Stops it.</param>
    /// <param name="former">A car told by nearly the same bumps, from which a single fit begins; null: all is looked for.</param>
    public static CarFromDrive? Of(
        EventSettings settings, Drive drive, Trust trust, DriveEvents? events, CarBeside? beside, CancellationToken stop, CarFromDrive? former = null)
    {
        if (events is null || trust.For(TrustUse.Car).Level == TrustLevel.None)
        {
            return null;
        }

        if (settings.Wheelbase is not { } wheelbase)
        {
            return CarIdentification.WithoutWheelbase;
        }

        // A car file gives what is measured with tape and scales. Its frequencies and damping stay out: a fit begun from them would agree with them.
        var usual = new IdentificationKnown { Wheelbase = wheelbase };
        var phone = settings.Phone;
        var windows = DriveWindows.Of(drive, events, trust);
        var model = new Lazy<RideModel>(() => beside!.Car.Model);
        var known = usual with
        {
            HumpLengths = DriveWindows.Humps(events),
            FrontShare = beside?.FrontShare ?? usual.FrontShare,
            FrontShareSpread = beside is null ? usual.FrontShareSpread : FileShare,
            PhoneBehindFrontAxle = (phone ?? PhonePlace.Unknown(wheelbase)).BehindFrontAxle,
            Bears = beside is null ? null : (road, speed) => SafePass.Is(model.Value, road, speed, stop),
            PhoneSpread = phone is null ? usual.PhoneSpread : Math.Max(PhoneAtLeast, phone.BehindFrontAxleSpread / Gaussian.Ninety),
        };
        return former is null ? CarIdentification.Of(windows, known, stop) : CarIdentification.Near(windows, known, former, stop);
    }
}
