using Heaveline.Drives.Events;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What is said of a phone's place that is not given, or possible and not plausible.</summary>
internal static class PhoneWords
{
    /// <summary>What is taken where nobody says where the phone lay, a sentence; none where somebody does.</summary>
    /// <param name="settings">What is known of the drive.</param>
    /// <param name="advice">To whom it is said.</param>
    public static IEnumerable<string> Missing(EventSettings settings, DriveAdvice advice)
    {
        var taken = PhonePlace.Unknown(settings.WheelbaseTaken);
        return settings.Phone is not null ? []
            : [Text($"Where the phone lay is not said: {taken.BehindFrontAxle:F2} m behind the front axle, the middle, was taken, ")
                + Text($"± {taken.BehindFrontAxleSpread:F2} m (90 %). {advice.Phone}")];
    }

    /// <summary>A sentence for each direction in which it lay farther off than phones do; none where its place is not known.</summary>
    /// <param name="phone">The place.</param>
    public static IEnumerable<string> Unusual(PhonePlace? phone)
    {
        if (phone is null)
        {
            yield break;
        }

        (double At, (double Low, double High) Usual, string Way)[] all =
        [
            (phone.BehindFrontAxle, PhonePlace.UsualBehind, "behind the front axle"),
            (phone.Left, PhonePlace.UsualLeft, "left of the middle"),
            (phone.Up, PhonePlace.UsualUp, "above the floor"),
        ];
        foreach (var (at, usual, way) in all.Where(a => a.At < a.Usual.Low || a.At > a.Usual.High))
        {
            yield return Text($"The phone's place is given as {at:0.0##} m {way}; {usual.Low:0.#} m to {usual.High:0.#} m is usual. ")
                + "Check the number, its sign and its unit.";
        }
    }
}
