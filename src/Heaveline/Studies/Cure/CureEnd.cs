namespace Heaveline.Studies;

/// <summary>Why a setting is turned no farther.</summary>
/// <param name="Breach">What no cure may do and it would do.</param>
/// <param name="Load">Under which load, that which ends it first.</param>
/// <param name="Last">How far it may be turned, to a step of its slider ("41 N/mm"); blank where not at all.</param>
public sealed record CureEnd(CureBreach Breach, string Load, string Last)
{
    /// <summary>Why the car then cannot stand or does not get across, over what and how fast, a clause; null for any other breach.</summary>
    public string? Why { get; init; }
}
