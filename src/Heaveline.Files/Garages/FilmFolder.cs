using Heaveline.Quantities;

namespace Heaveline.Files.Garages;

/// <summary>
/// Where films come into a garage: its folder <c>films</c>, each under its own name, byte by byte as it was filmed, and never in place of another.
/// </summary>
public static class FilmFolder
{
    /// <summary>The folder in the garage.</summary>
    public const string Folder = "films";

    /// <summary>How many of a film's first bytes tell whether it is one.</summary>
    public const int FirstBytes = 12;

    // What a disk needs besides for all else that is written on it.
    private const long Spare = 1_000_000_000;
    private const int Piece = 1 << 16;
    private const double Megabyte = 1_000_000.0;
    private const double Gigabyte = 1_000_000_000.0;

    private static readonly string[] Boxes = ["ftyp", "moov", "mdat", "wide", "free", "skip"];

    /// <summary>Why a film does not come in, with what to do; null: it may.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="file">Its name, without a folder.</param>
    /// <param name="bytes">How long it is.</param>
    /// <param name="free">How much room the disk has, bytes.</param>
    public static string? Refused(Garage garage, string file, long bytes, long free)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(file);
        var why = file.Contains('/', StringComparison.Ordinal) ? "must be a name without a folder"
            : GarageNames.Problem(NameOf(file), FileFormat.Film);
        if (why is not null)
        {
            return $"The film's name {why}. Give it a plain name, such as school-hump.mp4.";
        }

        if (bytes < FirstBytes || bytes > FileFormat.Film.MostBytes)
        {
            return bytes < FirstBytes ? $"{file} is empty."
                : $"{file} has {Size(bytes)}; a film has at most {Size(FileFormat.Film.MostBytes)}. Cut it to the seconds around the bump.";
        }

        if (Confined.Resolve(garage.Folder, Path.Combine(garage.Folder, file), NameOf(file)) is var (path, outside) && outside is not null)
        {
            return $"The garage's folder {Folder} {outside}: films are kept inside the garage alone.";
        }

        return File.Exists(path) || Directory.Exists(path)
            ? $"There is a film {file} in the garage already, and it is left as it is. Give yours another name first."
            : IsTooFull(bytes, free)
                ? $"The disk has room for {Size(free)}, of which {Size(Spare)} stay free, and the film has {Size(bytes)}. "
                    + "Make room there, or cut the film to the seconds around the bump."
            : null;
    }

    /// <summary>Whether a disk has too little room for a film.</summary>
    /// <param name="bytes">How long the film is.</param>
    /// <param name="free">How much room the disk has, bytes.</param>
    public static bool IsTooFull(long bytes, long free) => free - bytes < Spare;

    /// <summary>
    /// How much room the disk has on which a garage's films lie, bytes, without what killed programs left there. A disk that does not say is tried.
    /// </summary>
    /// <param name="garage">The garage.</param>
    public static long RoomOf(Garage garage)
    {
        ArgumentNullException.ThrowIfNull(garage);
        var films = PlaceOf(garage);
        try
        {
            Sweep(films);
            return new DriveInfo(Directory.Exists(films) ? films : Path.GetFullPath(garage.Folder)).AvailableFreeSpace;
        }
        catch (Exception untold) when (untold is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return long.MaxValue;
        }
    }

    /// <summary>
    /// Whether a file begins as a film does: in a box of ISO 14496-12 or of its forerunner, as EBML [RFC 8794 §11.2.1], or as RIFF of the kind AVI.
    /// What only names other files begins otherwise.
    /// </summary>
    /// <param name="first">Its first bytes, <see cref="FirstBytes"/> of them.</param>
    public static bool BeginsAsFilm(ReadOnlySpan<byte> first)
    {
        if (first.Length < FirstBytes)
        {
            return false;
        }

        var box = System.Text.Encoding.Latin1.GetString(first[4..8]);
        return Boxes.Contains(box, StringComparer.Ordinal) || first[..4].SequenceEqual<byte>([0x1A, 0x45, 0xDF, 0xA3])
            || (first[..4].SequenceEqual("RIFF"u8) && first[8..12].SequenceEqual("AVI "u8));
    }

    /// <summary>Takes a film in: whole under its name, or not at all.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="file">Its name, without a folder, which <see cref="Refused"/> lets in.</param>
    /// <param name="bytes">How many bytes come.</param>
    /// <param name="film">The bytes.</param>
    /// <param name="stop">Stops it; nothing is left then.</param>
    /// <returns>Its name in the garage, or why it is not there.</returns>
    /// <exception cref="IOException">The disk is full or cannot be written, or the film did not arrive whole.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static (string? Name, string Problem) Put(Garage garage, string file, long bytes, Stream film, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(film);
        var films = PlaceOf(garage);
        var path = Path.Combine(films, file);
        Directory.CreateDirectory(films);
        Sweep(films);
        var begins = true;
        var isKept = WholeFile.Write(
            path,
            stream =>
            {
                var first = new byte[FirstBytes];
                begins = film.ReadAtLeast(first, FirstBytes, throwOnEndOfStream: false) == FirstBytes && BeginsAsFilm(first);
                if (begins)
                {
                    stream.Write(first);
                    Rest(film, stream, bytes - FirstBytes, stop);
                }
            },
            () => begins && !stop.IsCancellationRequested,
            replaces: false);
        if (!isKept)
        {
            // Once it has its name it is there, whoever has gone since.
            stop.ThrowIfCancellationRequested();
        }

        return isKept ? (NameOf(file), "")
            : (null, begins ? $"There is a film {file} in the garage already, and it is left as it is. Give yours another name first."
                : NoFilm(file));
    }

    /// <summary>That a file is no film, in words.</summary>
    /// <param name="file">Its name.</param>
    public static string NoFilm(string file) => $"{file} is no film, whatever its name says. Choose the film as the phone wrote it.";

    private static string PlaceOf(Garage garage) => Path.GetFullPath(Path.Combine(garage.Folder, Folder));

    // One that is being written is held open by whoever writes it, however slowly it comes. What a link leads to is another's.
    private static void Sweep(string films)
    {
        if (new DirectoryInfo(films).LinkTarget is null)
        {
            PartialFile.SweepUnheld(films, FileFormat.Film.Has, TimeProvider.System.GetUtcNow().UtcDateTime);
        }
    }

    private static string NameOf(string file) => $"{Folder}/{file}";

    // More than was said is not taken, less is no whole film.
    private static void Rest(Stream from, Stream to, long bytes, CancellationToken stop)
    {
        var piece = new byte[Piece];
        for (var left = bytes; left > 0;)
        {
            stop.ThrowIfCancellationRequested();
            var read = from.Read(piece, 0, (int)Math.Min(left, piece.Length));
            if (read == 0)
            {
                throw new EndOfStreamException("The film did not arrive whole.");
            }

            to.Write(piece, 0, read);
            left -= read;
        }
    }

    private static string Size(long bytes) =>
        bytes < 100 * Megabyte ? $"{Numeral.Of(bytes / Megabyte, 1)} MB" : $"{Numeral.Of(bytes / Gigabyte, 2)} GB";
}
