using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>A car's elements in the kernel's slots, one a corner (bars and links: one for each wheel that feels them).</summary>
internal sealed class KernelSlots(RideNumbers numbers)
{
    private static readonly KernelSlot None = KernelSlot.Of(null);

    public RideNumbers Numbers { get; } = numbers;

    public KernelSlot[] Springs { get; } = [.. numbers.Elements.Springs.Select(KernelSlot.Of)];

    public KernelSlot[] Dampers { get; } = [.. numbers.Elements.Dampers.Select(KernelSlot.Of)];

    public KernelSlot[] BumpStops { get; } = [.. numbers.Elements.BumpStops.Select(KernelSlot.Of)];

    public KernelSlot[] ReboundStops { get; } = [.. numbers.Elements.ReboundStops.Select(KernelSlot.Of)];

    public KernelSlot[] Frictions { get; } = [.. numbers.Elements.Frictions.Select(KernelSlot.Of)];

    /// <summary>Front and rear bar at the wheels of their axles.</summary>
    public KernelSlot[] Bars { get; } = [.. Enumerable.Range(0, 4).Select(i => KernelSlot.Of(numbers.Elements.Bars[i / 2]))];

    /// <summary>Common spring of each side at its wheels.</summary>
    public KernelSlot[] CommonSprings { get; } = Sides(numbers.Elements.CommonSprings);

    public KernelSlot[] CommonDampers { get; } = Sides(numbers.Elements.CommonDampers);

    public KernelSlot[] Accumulators { get; } =
        numbers.Elements.Accumulators.Count > 0 ? [.. numbers.Elements.Accumulators.Select(KernelSlot.Of)] : [None, None, None, None];

    /// <summary>Parts of the kernel that this car needs.</summary>
    public Needs Needs { get; } = NeedsOf(numbers);

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

    private static KernelSlot[] Sides(IReadOnlyList<Element> sides) =>
        [.. Enumerable.Range(0, 4).Select(i => sides.Count > 0 ? KernelSlot.Of(sides[i % 2]) : None)];
}
