using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>
/// One element as the kernel reckons with it: its straight pieces in one sum, one gas, one power. An element with more is refused by name.
/// </summary>
internal sealed class KernelSlot : ILawReader<KernelRoom>
{
    private static readonly StraightLaw Nothing = new();

    private readonly Element? element;

    private KernelSlot(Element? element, KernelRoom room)
    {
        this.element = element;
        if (element is null)
        {
            return;
        }

        var used = element.Ratio.Varies ? KernelRoom.VaryingRatio : KernelRoom.None;
        used |= element.Slider is null ? KernelRoom.None : KernelRoom.Friction;
        foreach (var law in element.OnTravel)
        {
            // Asked by its type first: a generic method of a law is looked up at every call.
            used |= law is StraightLaw straight ? Read(straight) : law.ReadBy(this);
        }

        foreach (var law in element.OnRate)
        {
            // Over velocity the kernel knows straight pieces alone.
            OnRate = law is StraightLaw pieces ? OnRate.And(pieces) : throw Unknown(law.GetType().Name);
        }

        used |= OnRate == Nothing ? KernelRoom.None : KernelRoom.Damping;
        used |= OnRate.Opening.Count == 0 ? KernelRoom.None : KernelRoom.DampingHinges;
        if (OnRate.Closing.Count > 0 || (used & ~room) != 0)
        {
            throw Unknown($"{used & ~room}");
        }
    }

    /// <summary>Straight pieces over travel.</summary>
    public StraightLaw OnTravel { get; private set; } = Nothing;

    /// <summary>Straight pieces over velocity.</summary>
    public StraightLaw OnRate { get; } = Nothing;

    public GasLaw? Gas { get; private set; }

    public PowerLaw? Power { get; private set; }

    public Slider? Slider => element?.Slider;

    public RatioCurve Ratio => element?.Ratio ?? RatioCurve.One;

    /// <summary>Share of the travel of a wheel in what the element sees.</summary>
    public double Share(int wheel) => element?.Sight.Wheels[wheel] ?? 0.0;

    /// <param name="element">The element; null where there is none.</param>
    /// <param name="room">What the kernel has room for in an element of its kind.</param>
    /// <exception cref="NotSupportedException">It has something for which there is no room: named.</exception>
    public static KernelSlot Of(Element? element, KernelRoom room) => new(element, room);

    public KernelRoom Read(StraightLaw law)
    {
        OnTravel = OnTravel.And(law);
        return (law.Constant == 0.0 ? KernelRoom.None : KernelRoom.Constant)
            | (law.Slope == 0.0 ? KernelRoom.None : KernelRoom.Slope)
            | (law.Opening.Count == 0 ? KernelRoom.None : KernelRoom.Opening)
            | (law.Closing.Count == 0 ? KernelRoom.None : KernelRoom.Closing);
    }

    public KernelRoom Read(GasLaw law)
    {
        Gas = Gas is null ? law : throw Unknown("a second gas");
        return KernelRoom.Gas;
    }

    public KernelRoom Read(PowerLaw law)
    {
        Power = Power is null ? law : throw Unknown("a second power");
        return law.Direction > 0.0 ? KernelRoom.BumpPower : KernelRoom.ReboundPower;
    }

    private NotSupportedException Unknown(string what) => new($"A stepped run has no room for this in the {element?.Name}: {what}.");
}
