using Heaveline.Figures;
using Heaveline.Press;

namespace Heaveline.Cli.Output;

/// <summary>Writes a command's picture in the width that was asked for.</summary>
internal static class Pictures
{
    public static void Write(Streams streams, Figure figure, string path) =>
        FigureFile.Write(streams.Column ? figure.InColumn() : figure, path);
}
