namespace Heaveline.Films;

/// <summary>Which film a track was followed in, and from which marks: by that a kept track is known to belong to its film still.</summary>
/// <param name="Bytes">Length of the film's file.</param>
/// <param name="Ends">SHA-256 of the file's first and last bytes, in hexadecimal digits.</param>
/// <param name="Marks">What was marked.</param>
public sealed record FilmOrigin(long Bytes, string Ends, FilmMarks Marks)
{
    // Marks are written down to a tenth of a pixel and of a millisecond.
    private const double SamePlace = 0.06;
    private const double SameTime = 6e-5;

    /// <summary>Whether marks are those that the film was followed from, as they are written down; how far they may be off does not count.</summary>
    /// <param name="marks">The marks.</param>
    public bool IsFrom(FilmMarks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        bool Same(PicturePoint a, PicturePoint b) => Math.Abs(a.X - b.X) <= SamePlace && Math.Abs(a.Y - b.Y) <= SamePlace;
        return Math.Abs(marks.Time - Marks.Time) <= SameTime && Same(marks.Front, Marks.Front) && Same(marks.Rear, Marks.Rear)
            && Same(marks.BoxFrom, Marks.BoxFrom) && Same(marks.BoxTo, Marks.BoxTo);
    }
}
