using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>A pass as one HTML file, left to the program beside this one that has the pages.</summary>
internal static class LiveFiles
{
    /// <summary>Never asked for: see <see cref="Leave"/>.</summary>
    public static byte[] Of(Given given, PassAnswer answer, ReaderUnits units, CancellationToken stop) =>
        throw new InvalidOperationException("The program with the pages makes this file.");

    /// <summary>This program turns into the one that has the pages, with the same words.</summary>
    public static void Leave(Streams streams) => Serving.Become(streams);
}
