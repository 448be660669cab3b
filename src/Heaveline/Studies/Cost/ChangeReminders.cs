using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>What to check on the real car after a change, chosen by what changed. Words only: common practice, no source.</summary>
public static class ChangeReminders
{
    // Below these a change is within what a tape and a garage floor can tell.
    private const double Height = 3e-3;
    private const double Share = 0.02;
    private const double Drop = 1e-3;

    /// <summary>The reminders, in order.</summary>
    /// <param name="before">The car before.</param>
    /// <param name="after">The car after.</param>
    /// <param name="change">Both sides' side effects under one load.</param>
    public static IReadOnlyList<Sentence> Of(Car before, Car after, SideEffectsChange change)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(change);
        return [.. Heights(change), .. Parts(before, after), .. Balance(change), .. Lamp(after, change)];
    }

    private static IEnumerable<Sentence> Heights(SideEffectsChange change)
    {
        var moved = change.After.Wheels.Zip(change.Before.Wheels, (a, b) => Math.Abs(a.HeightChange - b.HeightChange)).Max() > Height;
        if (moved)
        {
            yield return new(
                "alignment",
                "The ride height changes: have camber, caster and toe measured, and look for bump steer through the travel (a steering rack's "
                + "height counts as well as the wheels').");
            yield return new(
                "clearance",
                "Look at the angles of drive shafts and propeller shaft, at brake hoses and wires in full droop, and at the clearance of tyres "
                + "and exhaust in full bump.");
            yield return new("levelling", "A load-sensing brake valve and height sensors are set by the distance from axle to body: set them anew.");
            yield return new(
                "driver-aids",
                "Sensors, cameras and radar of driver aids look along the body: have them set again where the maker asks for it.");
        }
    }

    private static IEnumerable<Sentence> Parts(Car before, Car after)
    {
        bool Differs<T>(Func<Axle, T> of) => before.Axles.Zip(after.Axles).Any(pair => !Equals(of(pair.First), of(pair.Second)));
        if (Differs(a => a.Spring))
        {
            yield return new(
                "springs",
                after.Axles.All(a => a.Spring.Swap is null || a.Spring.IsPlaced()) && after.HasSwap()
                    ? "Changed springs: measure the heights once they have settled in and compare them with those told. See that the springs stay "
                        + "seated in full droop, do not bind before the bump stop is solid, and suit the dampers' rebound."
                    : "Changed springs: the heights hold only where a new spring stands as high under its load as the old one, which a softer one "
                        + "does by a greater free length or packing; else the body sinks towards the stops. See that they stay seated in full "
                        + "droop, do not bind before the bump stop is solid, and suit the dampers' rebound.");
        }

        if (Differs(a => a.Damper))
        {
            yield return new("dampers", "Changed dampers: compare closed and open lengths with the stops, so that no damper becomes the stop.");
        }

        if (Differs(a => a.BumpStop))
        {
            yield return new(
                "bump-stops",
                "Changed bump stops: see at full bump, with the springs out, that no tyre, arm, shaft or exhaust touches before the stop is solid, "
                + "and that neither damper nor spring becomes the stop.");
        }

        if (Differs(a => a.AntiRollBar.Si))
        {
            yield return new(
                "anti-roll-bar",
                "Changed anti-roll bar: fit its links with the car standing on its wheels, and look for contact at full lock.");
        }

        if (Differs(a => a.Tyre) || Differs(a => a.Track.Si))
        {
            yield return new(
                "tyres",
                "Changed wheels or tyres: speed-dependent devices and the speedometer follow the rolling circumference; check load index, "
                + "clearance and scrub.");
        }

        if (!Equals(before.Interconnection, after.Interconnection))
        {
            yield return new(
                "interconnection",
                before.Interconnection is FluidLink || after.Interconnection is FluidLink
                    ? "Changed interconnection: set the car on stands and let the pressure off before a line is opened; bleed it, look for leaks "
                        + "after a day, and find out what happens to height and pitch when one side loses its pressure."
                    : "Changed interconnection: the link carries load; take the load off it before it is undone, and see that it stays clear over "
                        + "the whole travel of both ends.");
        }
    }

    private static IEnumerable<Sentence> Balance(SideEffectsChange change)
    {
        if (Math.Abs(change.FrontShareChange ?? 0.0) > Share)
        {
            yield return new("roll-balance", change.FrontShareChange > 0.0
                ? "More of the roll is held by the front: expect more understeer near the limit; try it step by step off public roads."
                : "More of the roll is held by the rear: expect less understeer near the limit, in the wet too; "
                    + "try it step by step off public roads.");
        }

        if (Math.Abs(change.BrakingRatio - 1.0) > Share)
        {
            yield return new(
                "brake-balance",
                "The nose dives differently: check the brake balance on a roller tester with the usual load, and the travel left at the front "
                + "in hard braking.");
        }
    }

    private static IEnumerable<Sentence> Lamp(Car after, SideEffectsChange change)
    {
        if (Math.Abs(change.LampDropChange ?? 0.0) > Drop)
        {
            yield return new(
                "beam",
                "The dipped beam points elsewhere: set it with the load that the rule asks for, and see that the leveller still reaches every load.");
        }
        else if (after.Headlamp is null && Math.Abs(change.BrakingRatio - 1.0) > Share)
        {
            yield return new("beam", "The car file has no headlamp: set the beam anew after the change.");
        }
    }
}
