using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>A car's elements in the kernel's slots, one a corner (bars and links: one for each wheel that feels them).</summary>
internal sealed class KernelSlots
{
    private static readonly KernelSlot None = KernelSlot.Of(null, KernelRoom.None);

    private int placed;

    /// <exception cref="NotSupportedException">An element for which the kernel has no place, or not enough room in it: named.</exception>
    public KernelSlots(RideNumbers numbers)
    {
        Numbers = numbers;
        var elements = numbers.Elements;
        Springs = Corners(elements.Springs, KernelRoom.Spring);
        Dampers = Corners(elements.Dampers, KernelRoom.Damper);
        BumpStops = Corners(elements.BumpStops, KernelRoom.BumpStop);
        ReboundStops = Corners(elements.ReboundStops, KernelRoom.ReboundStop);
        Frictions = Corners(elements.Frictions, KernelRoom.Friction);
        Accumulators = Corners(elements.Accumulators, KernelRoom.Volume);
        var bars = Corners(elements.Bars, KernelRoom.Slope);
        Bars = [bars[0], bars[0], bars[1], bars[1]];
        CommonSprings = Sides(elements.CommonSprings, KernelRoom.Volume);
        CommonDampers = Sides(elements.CommonDampers, KernelRoom.Damping);
        _ = Sides(elements.Resistances, KernelRoom.Damping);
        if (placed != elements.All.Count)
        {
            throw new NotSupportedException(
                $"A stepped run has a place for {placed} of these: {string.Join(", ", elements.All.Select(element => element.Name))}.");
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
            needs |= Numbers.AcrossAxle[i] != 0.0 ? Needs.SolidAxle : Needs.None;
            needs |= Springs[i].Ratio.Varies || Dampers[i].Ratio.Varies ? Needs.VaryingRatio : Needs.None;
            needs |= Springs[i].Gas is not null ? Needs.Gas : Needs.None;
            needs |= BumpStops[i].Power is not null || ReboundStops[i].Power is not null ? Needs.CurvedStop : Needs.None;
            needs |= Frictions[i].Slider is not null ? Needs.Friction : Needs.None;
            needs |= CommonSprings[i].Gas is not null || Accumulators[i].Gas is not null ? Needs.FluidGas : Needs.None;
        }

        for (var k = 0; k < elements.All.Count; k++)
        {
            needs |= IsAlongAxle(elements.All[k]) ? Needs.SolidAxle : Needs.None;
        }

        return needs;
    }

    // Bars see both wheels too, but not as a place between them.
    private static bool IsAlongAxle(Element element) => element.Sight.Wheels[element.Corner ^ 1] > 0.0;

    private KernelSlot[] Corners(IReadOnlyList<Element?> elements, KernelRoom room)
    {
        KernelSlot[] slots = [None, None, None, None];
        for (var i = 0; i < elements.Count; i++)
        {
            if (elements[i] is { } element)
            {
                slots[i] = KernelSlot.Of(element, room);
                placed++;
            }
        }

        return slots;
    }

    private KernelSlot[] Sides(IReadOnlyList<Element> elements, KernelRoom room)
    {
        var sides = Corners(elements, room);
        return [sides[0], sides[1], sides[0], sides[1]];
    }
}
