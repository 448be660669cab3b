namespace Heaveline.Studies;

/// <summary>A way of turning a setting that would take off what is felt, but is no cure.</summary>
/// <param name="Act">What is done ("stiffer rear spring").</param>
/// <param name="End">What no cure may do and it does, at the first step that does; null where its chance is what is against it.</param>
public sealed record CureLeft(string Act, CureEnd? End)
{
    /// <summary>In how many drawn cars it would help, where those are too few; null where something else is against it.</summary>
    public CureChance? Chance { get; init; }
}
