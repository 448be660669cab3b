using System.Globalization;

namespace Heaveline.References.Peers;

/// <summary>Finds bench/peers in the checkout that holds the tests.</summary>
internal static class PeerFiles
{
    internal static string Case(string name) => Path.Combine(Folder, "cases", name + ".json");

    /// <summary>Rows of a result file without its heading.</summary>
    internal static double[][] Result(string name) =>
    [
        .. File.ReadLines(Path.Combine(Folder, "results", name + ".csv")).Skip(1)
            .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()),
    ];

    private static string Folder
    {
        get
        {
            for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            {
                var path = Path.Combine(folder.FullName, "bench", "peers");
                if (Directory.Exists(Path.Combine(path, "cases")))
                {
                    return path;
                }
            }

            throw new DirectoryNotFoundException("bench/peers/cases is in no folder above the tests.");
        }
    }
}
