using Heaveline.Drives.Events;
using Heaveline.Drives.Planning;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>A hump that was crossed on purpose, and faster than the program sends anybody over one.</summary>
internal static class FastHump
{
    /// <summary>A sentence that names each such hump with its fastest pass; null where none is.</summary>
    /// <param name="events">The bumps of the drive.</param>
    /// <param name="where">In which of several drives, with a space before it; blank: there is one.</param>
    /// <param name="advice">To whom it is said; null: to whoever typed a command.</param>
    public static string? Caution(DriveEvents events, string where = "", DriveAdvice? advice = null)
    {
        if (!events.HasSpeed)
        {
            return null;
        }

        // Only what is surely faster; what was met once, on the way, nobody chose. Of a joint met at speed no length is known, or a short one.
        string[] fast =
        [
            .. events.Sites.Where(s => s.Kind == EventKind.Hump && s.Events.Length > 1
                    && s.Events.Any(e => e.IsKept && e.IsLengthKnown && e.Length >= DriveEvent.Short))
                .Select(s => (s.Name, Pass: s.Events.MaxBy(e => e.Speed - e.SpeedHalfWidth)!))
                .Where(s => s.Pass.Speed - s.Pass.SpeedHalfWidth > TestDay.Fastest)
                .Select(s => Text($"{s.Name} at {In.KilometresPerHour.Of(s.Pass.Speed):F0} km/h")),
        ];
        return fast.Length == 0 ? null
            : Text($"Crossed fast{where}: {string.Join(", ", fast)}; {(advice ?? DriveAdvice.Command).Planned} nobody over a hump faster than ")
                + Text($"{In.KilometresPerHour.Of(TestDay.Fastest):F0} km/h.");
    }
}
