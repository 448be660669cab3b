namespace Heaveline.Tests.Cli;

/// <summary>An empty folder that goes with the test.</summary>
internal sealed class Scratch : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("heaveline-cli-");

    /// <summary>A path inside it.</summary>
    public string this[string name] => Path.Combine(folder.FullName, name);

    /// <summary>What lies in it, by name.</summary>
    public IReadOnlyList<string> Contents => [.. folder.EnumerateFileSystemInfos().Select(entry => entry.Name).Order(StringComparer.Ordinal)];

    public void Dispose() => folder.Delete(recursive: true);
}
