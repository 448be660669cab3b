using Heaveline.Films;

namespace Heaveline.Cli.Commands;

/// <summary>The camera part, left to the program beside this one: it is loaded while that runs.</summary>
internal static class FilmCameras
{
    /// <summary>What to do where there is none.</summary>
    public const string Missing =
        "Following a film needs the whole program with its camera part. A kept track (.csv) is read without it.";

    /// <summary>None.</summary>
    public static IFilmCamera? Find() => null;
}
