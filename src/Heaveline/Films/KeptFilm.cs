namespace Heaveline.Films;

/// <summary>A film as it was found: what was written down about it, and its track.</summary>
/// <param name="Sheet">What was written down.</param>
/// <param name="Track">The track.</param>
public sealed record KeptFilm(FilmSheet Sheet, FilmTrack Track);
