namespace Heaveline.BrowserTests;

/// <summary>Where this checkout lies.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Heaveline.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests do not run from a checkout.");
    }
}
