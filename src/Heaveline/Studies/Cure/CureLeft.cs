namespace Heaveline.Studies;

/// <summary>A way of turning a setting that would take off what is felt, but is no cure.</summary>
/// <param name="Act">What is done ("stiffer rear spring").</param>
/// <param name="Breach">What it does, at the first step that does it, that no cure may do.</param>
public sealed record CureLeft(string Act, CureBreach Breach);
