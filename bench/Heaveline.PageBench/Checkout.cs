namespace Heaveline.PageBench;

/// <summary>Where this checkout lies.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Heaveline.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("The bench does not run from a checkout.");
    }
}
