using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>
/// What the kernel has room for in one element: hinges on travel and on velocity, one gas, one power. An element with more is refused by name.
/// </summary>
internal sealed class KernelSlot : ILawReader<bool>
{
    private static readonly StraightLaw Nothing = new();

    private readonly Element? element;

    private KernelSlot(Element? element)
    {
        this.element = element;
        foreach (var law in element?.OnTravel ?? [])
        {
            law.ReadBy(this);
        }

        foreach (var law in element?.OnRate ?? [])
        {
            OnRate = OnRate == Nothing && law is StraightLaw straight ? straight : throw Unknown(law);
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

    public static KernelSlot Of(Element? element) => new(element);

    public bool Read(StraightLaw law) => (OnTravel = OnTravel == Nothing ? law : throw Unknown(law)) is not null;

    public bool Read(GasLaw law) => (Gas = Gas is null ? law : throw Unknown(law)) is not null;

    public bool Read(PowerLaw law) => (Power = Power is null ? law : throw Unknown(law)) is not null;

    private NotSupportedException Unknown(Law law) => new($"The kernel has no room for one more {law.GetType().Name} in the {element?.Name}.");
}
