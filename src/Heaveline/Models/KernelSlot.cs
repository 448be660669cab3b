using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>
/// One element as the kernel reckons with it: its straight pieces in one sum, one gas, one power. An element with more is refused by name.
/// </summary>
internal sealed class KernelSlot : ILawReader<KernelRoom>
{
    private static readonly StraightLaw Nothing = new();

    private readonly Element? element;

    private KernelSlot(Element? element, KernelRoom room, bool placed)
    {
        this.element = element;
        if (element is null)
        {
            return;
        }

        if (!placed)
        {
            throw Unknown("what it sees of the wheels and the flows");
        }

        var used = element.Ratio.AtReference == 1.0 ? KernelRoom.None : KernelRoom.Ratio;
        used |= element.Ratio.Varies ? KernelRoom.VaryingRatio : KernelRoom.None;
        used |= element.Slider is null ? KernelRoom.None : KernelRoom.Friction;
        foreach (var law in element.TravelLaws)
        {
            // Asked by its type first: a generic method of a law is looked up at every call.
            used |= law is StraightLaw straight ? Read(straight) : law.ReadBy(this);
        }

        foreach (var law in element.RateLaws)
        {
            // Over velocity the kernel knows straight pieces alone.
            OnRate = law is StraightLaw pieces ? OnRate.And(pieces) : throw Unknown(law.GetType().Name);
        }

        used |= OnRate.Slope == 0.0 ? KernelRoom.None : KernelRoom.Damping;
        used |= OnRate.Constant == 0.0 ? KernelRoom.None : KernelRoom.DampingConstant;
        used |= OnRate.Opens.Length == 0 ? KernelRoom.None : KernelRoom.DampingHinges;
        if (OnRate.Closes.Length > 0 || (used & ~room) != 0)
        {
            throw Unknown($"{used & ~room}");
        }
    }

    /// <summary>Whether there is such an element.</summary>
    public bool Exists => element is not null;

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
    /// <param name="placed">Whether it sees what the kernel takes elements of its kind to see.</param>
    /// <exception cref="NotSupportedException">It stands elsewhere, or has something for which there is no room: named.</exception>
    public static KernelSlot Of(Element? element, KernelRoom room, bool placed = true) => new(element, room, placed);

    /// <summary>Refuses it where it does not see the same as another that is there.</summary>
    public void RefuseElsewhere(KernelSlot other)
    {
        if (element is { } one && other.element is { } another && !one.Sight.Is(another.Sight))
        {
            throw Unknown($"what it sees is not what the {another.Name} sees");
        }
    }

    /// <summary>Refuses it where its laws are not those of its like on the other side, of which the kernel has one number for both.</summary>
    public void RefuseUnlike(KernelSlot other)
    {
        if (Exists != other.Exists || !Alike(OnTravel, other.OnTravel) || !Alike(OnRate, other.OnRate)
            || Gas?.Reference != other.Gas?.Reference || Gas?.PerVolume != other.Gas?.PerVolume || Gas?.Exponent != other.Gas?.Exponent)
        {
            throw (Exists ? this : other).Unknown("laws of its own on each side");
        }
    }

    /// <summary>Refuses a damper whose corners are not those of the axle's other one: the kernel has one number for both.</summary>
    public void RefuseUnlikeCorners(KernelSlot other)
    {
        if (Ratio.AtReference != other.Ratio.AtReference || !Hinge.Alike(OnRate.Opens, other.OnRate.Opens))
        {
            throw (Exists ? this : other).Unknown("corners of its own on each side");
        }
    }

    public KernelRoom Read(StraightLaw law)
    {
        OnTravel = OnTravel.And(law);
        return (law.Constant == 0.0 ? KernelRoom.None : KernelRoom.Constant)
            | (law.Slope == 0.0 ? KernelRoom.None : KernelRoom.Slope)
            | (law.Opens.Length == 0 ? KernelRoom.None : KernelRoom.Opening)
            | (law.Closes.Length == 0 ? KernelRoom.None : KernelRoom.Closing);
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

    private static bool Alike(StraightLaw one, StraightLaw other) => ReferenceEquals(one, other)
        || (one.Constant == other.Constant && one.Slope == other.Slope
            && Hinge.Alike(one.Opens, other.Opens) && Hinge.Alike(one.Closes, other.Closes));

    private NotSupportedException Unknown(string what) => new($"A stepped run has no room for this in the {element?.Name}: {what}.");
}
