namespace Heaveline.Tests.House;

/// <summary>The source tree the tests run from.</summary>
internal static class Checkout
{
    /// <summary>The folder that holds Heaveline.slnx.</summary>
    public static string Root { get; } = Find();

    /// <summary>Every source file in C# under a folder of the checkout, pages among them, build outputs left out.</summary>
    public static IEnumerable<string> Sources(params string[] folder) =>
        Directory.EnumerateFiles(Path.Combine([Root, .. folder]), "*.*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor" && !f.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin"));

    /// <summary>A path as the checkout names it.</summary>
    public static string Relative(string file) => Path.GetRelativePath(Root, file).Replace(Path.DirectorySeparatorChar, '/');

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Heaveline.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("No folder above the tests holds Heaveline.slnx.");
    }
}
