namespace Heaveline.Tests.Files;

/// <summary>A folder of a test's own, gone with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Root { get; } = Directory.CreateTempSubdirectory("heaveline-").FullName;

    /// <summary>Writes a file and gives its path.</summary>
    public string Write(string name, string text)
    {
        var path = Path.Combine(Root, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
