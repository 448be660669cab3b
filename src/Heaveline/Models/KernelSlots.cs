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

        Needs = NeedsOf(numbers);
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

    /// <summary>Parts of the kernel that a car needs.</summary>
    public static Needs NeedsOf(RideNumbers numbers)
    {
        var elements = numbers.Elements;
        bool Gas(IEnumerable<Element?> of) => of.OfType<Element>().Any(element => element.OnTravel.Any(law => law is GasLaw));
        bool Power(IEnumerable<Element?> of) => of.OfType<Element>().Any(element => element.OnTravel.Any(law => law is PowerLaw));
        var needs = Needs.None;
        Add(Needs.SolidAxle, numbers.AcrossAxle.Any(across => across != 0.0) || elements.All.Any(IsAlongAxle));
        Add(Needs.VaryingRatio, elements.Springs.Concat(elements.Dampers).Any(element => element.Ratio.Varies));
        Add(Needs.Gas, Gas(elements.Springs));
        Add(Needs.CurvedStop, Power(elements.BumpStops) || Power(elements.ReboundStops));
        Add(Needs.Friction, elements.Frictions.Any(friction => friction is not null));
        Add(Needs.ElasticLink, elements.CommonSprings.Count > 0 || elements.CommonDampers.Count > 0);
        Add(Needs.FluidLink, elements.Accumulators.Count > 0);
        Add(Needs.FluidGas, Gas(elements.CommonSprings) || Gas(elements.Accumulators));
        Add(Needs.ResistiveLine, elements.Line is { Resists: true });
        return needs;

        void Add(Needs need, bool isThere) => needs |= isThere ? need : Needs.None;
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
