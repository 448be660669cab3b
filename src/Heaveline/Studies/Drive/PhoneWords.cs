using Heaveline.Drives.Events;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What is said of a phone's place that is possible and not plausible.</summary>
internal static class PhoneWords
{
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
