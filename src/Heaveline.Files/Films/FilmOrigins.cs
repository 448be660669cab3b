using System.Security.Cryptography;
using Heaveline.Films;

namespace Heaveline.Files.Films;

/// <summary>What a film on the disk is known by, and whether a kept track belongs to it.</summary>
public static class FilmOrigins
{
    // So much of a film's beginning and of its end: writers put what they know of it into one of both.
    private const int End = 1 << 16;

    /// <summary>What a track of a film is to be known by.</summary>
    /// <param name="film">The film.</param>
    /// <param name="marks">What was marked.</param>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static FilmOrigin Of(string film, FilmMarks marks)
    {
        using var file = File.OpenRead(film);
        var ends = new byte[Math.Min(file.Length, 2 * End)];
        var first = (int)Math.Min(file.Length, End);
        file.ReadExactly(ends, 0, first);
        file.Seek(-(ends.Length - first), SeekOrigin.End);
        file.ReadExactly(ends, first, ends.Length - first);
        return new FilmOrigin(file.Length, Convert.ToHexString(SHA256.HashData(ends)), marks);
    }

    /// <summary>Why a kept track is not of this film, or not from these marks; blank where it is, or says nothing of where it came from.</summary>
    /// <param name="track">The track.</param>
    /// <param name="sheet">What is written down of the film.</param>
    /// <param name="film">The film itself; null or not there: its marks alone are looked at.</param>
    public static string Unlike(FilmTrack track, FilmSheet sheet, string? film)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(sheet);
        if (track.Origin is not { } origin)
        {
            return "";
        }

        if (sheet.Marks is { } marks && !origin.IsFrom(marks))
        {
            return "it was followed from other marks than its sheet has now";
        }

        try
        {
            return film is not null && File.Exists(film) && Of(film, origin.Marks) is var now && (now.Bytes, now.Ends) != (origin.Bytes, origin.Ends)
                ? $"it was followed in another film than {Path.GetFileName(film)} is now"
                : "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"whether it is of the film that lies there is not known ({e.Message.TrimEnd('.')})";
        }
    }
}
