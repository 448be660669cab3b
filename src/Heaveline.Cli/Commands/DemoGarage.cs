namespace Heaveline.Cli.Commands;

/// <summary>The invented cars that come with the program.</summary>
internal static class DemoGarage
{
    /// <summary>Its folder: in a checkout above the program, or beside a published program; null when it is in neither place.</summary>
    public static string? Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var garage = Path.Combine(folder.FullName, "examples", "garage");
            if (Directory.Exists(garage))
            {
                return garage;
            }
        }

        return null;
    }
}
