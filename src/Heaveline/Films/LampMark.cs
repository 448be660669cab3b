namespace Heaveline.Films;

/// <summary>Where an oncoming headlamp is in a film.</summary>
/// <param name="At">Its place, px to the right and down from the upper left.</param>
/// <param name="Time">When it is there, s after the film's first frame.</param>
public readonly record struct LampMark(PicturePoint At, double Time);
