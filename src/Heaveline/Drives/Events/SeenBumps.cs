using System.Collections.Immutable;

namespace Heaveline.Drives.Events;

/// <summary>
/// What of looking for bumps does not ask which of them count or what they are called: most of the work, worth keeping for the next look.
/// </summary>
/// <param name="Drive">The drive that was looked through.</param>
/// <param name="Settings">What was known then.</param>
/// <param name="All">What stood out in time or was named by hand, each with its speed and how well usual cars go with it.</param>
/// <param name="Curves">The curves of the whole drive.</param>
internal sealed record SeenBumps(
    Drive Drive, EventSettings Settings, ImmutableArray<(Candidate Candidate, EventSpeed Speed, OnsetTable Table)> All, MotionCurves Curves)
{
    /// <summary>Whether looking again would see the same, to the bit.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="settings">What is known now.</param>
    public bool Holds(Drive drive, EventSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return ReferenceEquals(Drive, drive) && Settings.Wheelbase == settings.Wheelbase && Settings.Phone == settings.Phone
            && Settings.Added.SequenceEqual(settings.Added);
    }
}
