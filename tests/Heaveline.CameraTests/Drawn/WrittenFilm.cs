using Heaveline.Camera.Drawn;

namespace Heaveline.CameraTests.Drawn;

/// <summary>A drawn film as a file, for as long as a test needs it.</summary>
internal sealed class WrittenFilm : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("heaveline-film-");

    public WrittenFilm(DrawnFilm film, int quality = 23, double? slowedTo = null) =>
        FilmWriter.Write(film, Path, quality, "ultrafast", slowedTo);

    public string Path => System.IO.Path.Combine(folder.FullName, "film.mp4");

    public void Dispose() => folder.Delete(recursive: true);
}
