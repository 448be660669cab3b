namespace Heaveline.Films;

/// <summary>What a film says of itself.</summary>
/// <param name="Width">Width of the picture, px.</param>
/// <param name="Height">Height of the picture, px.</param>
/// <param name="Frames">How many frames it says it has; null where it says nothing.</param>
/// <param name="Duration">How long it lasts, s; null where it says nothing.</param>
public sealed record FilmLook(int Width, int Height, int? Frames, double? Duration);
