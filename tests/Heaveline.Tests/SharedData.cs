namespace Heaveline.Tests;

/// <summary>
/// Finds measured data kept beside the checkout, in a folder <c>shared/data</c> of any folder above the tests. Not every machine has it.
/// </summary>
internal static class SharedData
{
    /// <summary>The path of a file below <c>shared/data</c>; skips the running test, by name, when it is absent.</summary>
    internal static string Require(params string[] parts)
    {
        var relative = Path.Combine(["shared", "data", .. parts]);
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, relative);
            if (File.Exists(path))
            {
                return path;
            }
        }

        Assert.Skip($"{relative} is not on this machine");
        return "";
    }
}
