using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>A car's elements in the kernel's slots, one a corner (bars and links: one for each wheel that feels them).</summary>
internal sealed class KernelSlots
{
    private static readonly KernelSlot None = KernelSlot.Of(null, KernelRoom.None);

    private int count;

    /// <exception cref="NotSupportedException">An element for which the kernel has no place, or not enough room in it: named.</exception>
    public KernelSlots(RideNumbers numbers)
    {
        Numbers = numbers;
        var elements = numbers.Elements;
        var flows = elements.Line is not null;
        Springs = Slots(elements.Springs, KernelRoom.Spring, static (sight, i) => sight.IsAlong(i));
        Dampers = Slots(elements.Dampers, KernelRoom.Damper, static (sight, i) => sight.IsAlong(i));
        BumpStops = Slots(elements.BumpStops, KernelRoom.BumpStop, static (sight, i) => sight.IsAlong(i));
        ReboundStops = Slots(elements.ReboundStops, KernelRoom.ReboundStop, static (sight, i) => sight.IsAlong(i));
        Frictions = Slots(elements.Frictions, KernelRoom.Friction, static (sight, i) => sight.IsAt(i));
        Accumulators = Slots(elements.Accumulators, KernelRoom.Volume, (sight, i) => sight.IsVolume(i, flows));
        var bars = Slots(elements.Bars, KernelRoom.Slope, static (sight, axle) => sight.IsAcross(2 * axle));
        Bars = [bars[0], bars[0], bars[1], bars[1]];
        CommonSprings = Sides(elements.CommonSprings, KernelRoom.Volume, static (sight, side) => sight.IsSide(side));
        CommonDampers = Sides(elements.CommonDampers, KernelRoom.Damping, static (sight, side) => sight.IsSide(side));
        Resistances = Sides(elements.Resistances, KernelRoom.Damping, (sight, side) => flows && sight.IsFlow(side));
        for (var i = 0; i < 4; i++)
        {
            ReboundStops[i].RefuseElsewhere(BumpStops[i]);
            CommonDampers[i].RefuseElsewhere(CommonSprings[i]);
            Dampers[i].RefuseUnlikeCorners(Dampers[i ^ 1]);
        }

        if (count != elements.All.Count)
        {
            throw new NotSupportedException(
                $"A stepped run has a place for {count} of these: {string.Join(", ", elements.All.Select(element => element.Name))}.");
        }

        if (elements.Line is { Resists: true } && !(Resistances[0].OnRate.Slope > 0.0))
        {
            throw new NotSupportedException("A stepped run has no place for a line with neither inertance nor resistance.");
        }

        Needs = Needed();
    }

    public RideNumbers Numbers { get; }

    public KernelSlot[] Springs { get; }

    public KernelSlot[] Dampers { get; }

    public KernelSlot[] BumpStops { get; }

    public KernelSlot[] ReboundStops { get; }

    public KernelSlot[] Frictions { get; }

    /// <summary>Front and rear bar at the wheels of their axles.</summary>
    public KernelSlot[] Bars { get; }

    /// <summary>Common spring of each side at its wheels.</summary>
    public KernelSlot[] CommonSprings { get; }

    public KernelSlot[] CommonDampers { get; }

    public KernelSlot[] Accumulators { get; }

    /// <summary>What resists the flow of each side's line, at its wheels.</summary>
    public KernelSlot[] Resistances { get; }

    /// <summary>Parts of the kernel that this car needs.</summary>
    public Needs Needs { get; }

    private Needs Needed()
    {
        var elements = Numbers.Elements;
        var needs = elements.CommonSprings.Count > 0 || elements.CommonDampers.Count > 0 ? Needs.ElasticLink : Needs.None;
        needs |= elements.Accumulators.Count > 0 ? Needs.FluidLink : Needs.None;
        needs |= elements.Line is { Resists: true } ? Needs.ResistiveLine : Needs.None;
        for (var i = 0; i < 4; i++)
        {
            needs |= Numbers.AcrossAxle[i] != 0.0 || IsAlongAxle(i) ? Needs.SolidAxle : Needs.None;
            needs |= Springs[i].Ratio.Varies || Dampers[i].Ratio.Varies ? Needs.VaryingRatio : Needs.None;
            needs |= Springs[i].Gas is not null ? Needs.Gas : Needs.None;
            needs |= BumpStops[i].Power is not null || ReboundStops[i].Power is not null ? Needs.CurvedStop : Needs.None;
            needs |= Frictions[i].Slider is not null ? Needs.Friction : Needs.None;
            needs |= CommonSprings[i].Gas is not null || Accumulators[i].Gas is not null ? Needs.FluidGas : Needs.None;
        }

        return needs;
    }

    // Whether an element of a corner sees a place between the wheels.
    private bool IsAlongAxle(int i) => Springs[i].Share(i ^ 1) > 0.0 || Dampers[i].Share(i ^ 1) > 0.0 || BumpStops[i].Share(i ^ 1) > 0.0
        || ReboundStops[i].Share(i ^ 1) > 0.0;

    private KernelSlot[] Slots(IReadOnlyList<Element?> elements, KernelRoom room, Func<Sight, int, bool> placed)
    {
        KernelSlot[] slots = [None, None, None, None];
        for (var i = 0; i < elements.Count; i++)
        {
            if (elements[i] is { } element)
            {
                slots[i] = KernelSlot.Of(element, room, placed(element.Sight, i));
                count++;
            }
        }

        return slots;
    }

    private KernelSlot[] Sides(IReadOnlyList<Element> elements, KernelRoom room, Func<Sight, int, bool> placed)
    {
        var sides = Slots(elements, room, placed);
        sides[0].RefuseUnlike(sides[1]);
        return [sides[0], sides[1], sides[0], sides[1]];
    }
}
