using Heaveline.Cli.Output;
using Heaveline.Films;

namespace Heaveline.Cli.Commands;

/// <summary>The camera part, left to the program beside this one, which can load it: this one turns into it.</summary>
internal static class FilmCameras
{
    /// <summary>What to do where there is none.</summary>
    public const string Missing =
        "Following a film needs the whole program with its camera part. A kept track (.csv) is read without it.";

    /// <summary>Comes back never.</summary>
    /// <param name="streams">Where words go.</param>
    public static IFilmCamera? Find(Streams streams)
    {
        Serving.Become(streams);
        return null;
    }
}
