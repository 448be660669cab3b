namespace Heaveline.Films;

/// <summary>What follows marks through the pictures of a film; the core sees tracks, never pictures.</summary>
public interface IFilmCamera
{
    /// <summary>Follows the marks through a film.</summary>
    /// <param name="film">Path of the film.</param>
    /// <param name="marks">What was marked.</param>
    /// <param name="progress">Is told the share of the film that has been followed.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The track.</returns>
    /// <exception cref="Quantities.RefusedValueException">The film cannot be read, or the car is never whole in view.</exception>
    FilmTrack Follow(string film, FilmMarks marks, IProgress<double>? progress = null, CancellationToken stop = default);

    /// <summary>What a film says of itself.</summary>
    /// <param name="film">Path of the film.</param>
    /// <exception cref="Quantities.RefusedValueException">The film cannot be read.</exception>
    FilmLook Look(string film);

    /// <summary>One frame as a picture, in PNG, to be marked; it is shown to the one who films and to nobody else.</summary>
    /// <param name="film">Path of the film.</param>
    /// <param name="time">The instant, s since the first frame; the nearest frame is taken.</param>
    /// <param name="stop">Stops it.</param>
    byte[] Frame(string film, double time, CancellationToken stop = default);

    /// <summary>Where the two hubs may be in a frame, the left one first; null where none are found.</summary>
    /// <param name="film">Path of the film.</param>
    /// <param name="time">The instant, s since the first frame.</param>
    /// <param name="stop">Stops it.</param>
    (PicturePoint Left, PicturePoint Right)? Hubs(string film, double time, CancellationToken stop = default);

    /// <summary>The marked frame as a picture that may be shown, in PNG: the two wheels are clear, the rest of the car is
    /// coarser than letters, and all round it is grey.</summary>
    /// <param name="film">Path of the film.</param>
    /// <param name="marks">What was marked.</param>
    /// <param name="stop">Stops it.</param>
    byte[] Still(string film, FilmMarks marks, CancellationToken stop = default);

    /// <summary>Follows the brightness of a headlamp through a film of an oncoming car at night.</summary>
    /// <param name="film">Path of the film.</param>
    /// <param name="lamp">Where the lamp is at the time of the mark, px.</param>
    /// <param name="time">The time of the mark, s.</param>
    /// <param name="progress">Is told the share of the film that has been followed.</param>
    /// <param name="stop">Stops it.</param>
    /// <returns>The brightness against time.</returns>
    LampTrack Brightness(string film, PicturePoint lamp, double time, IProgress<double>? progress = null, CancellationToken stop = default);
}
