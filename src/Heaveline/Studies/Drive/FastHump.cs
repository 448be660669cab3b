using Heaveline.Drives.Events;
using Heaveline.Drives.Planning;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Bumps that were crossed faster than the program sends anybody over one.</summary>
internal static class FastHump
{
    /// <summary>
    /// A sentence that names each such site, whatever its kind or length, with its fastest pass; those that were met once and that nobody named are
    /// counted. Null where there is none.
    /// </summary>
    /// <param name="events">The bumps of the drive.</param>
    /// <param name="where">In which of several drives, with a space before it; blank: there is one.</param>
    /// <param name="advice">To whom it is said; null: to whoever typed a command.</param>
    public static string? Caution(DriveEvents events, string where = "", DriveAdvice? advice = null)
    {
        if (!events.HasSpeed)
        {
            return null;
        }

        // A bump whose numbers do not count was crossed all the same. Only what is surely faster.
        (DriveSite Site, DriveEvent Pass)[] fast =
        [
            .. events.Sites.Where(s => s.Kept > 0)
                .Select(s => (Site: s, Pass: s.Events.Where(e => e.Kind != EventKind.Braking).MaxBy(e => e.Speed - e.SpeedHalfWidth)))
                .Where(s => s.Pass is { } pass && pass.Speed - pass.SpeedHalfWidth > TestDay.Fastest)
                .Select(s => (s.Site, s.Pass!)),
        ];
        var (named, met) = (fast.Where(s => IsTold(s.Site)).ToArray(), fast.Where(s => !IsTold(s.Site)).ToArray());
        string[] told =
        [
            .. named.Select(s => Text($"{s.Site.Name} at {Speed(s.Pass)} km/h")),
            .. met.Length == 0 ? [] : new[]
            {
                met.Length == 1 ? Text($"one bump met once, at {Speed(met[0].Pass)} km/h")
                    : Text($"{met.Length} bumps met once, at up to {Speed(met.MaxBy(s => s.Pass.Speed).Pass)} km/h"),
            },
        ];
        return told.Length == 0 ? null
            : Text($"Crossed fast{where}: {string.Join(", ", told)}; {(advice ?? DriveAdvice.Command).Planned} nobody over a hump faster than ")
                + Text($"{In.KilometresPerHour.Of(TestDay.Fastest):F0} km/h.");
    }

    // Crossed again and again, or called by a name.
    private static bool IsTold(DriveSite site) => site.Events.Length > 1 || site.IsNamed;

    private static string Speed(DriveEvent pass) => Text($"{In.KilometresPerHour.Of(pass.Speed):F0}");
}
