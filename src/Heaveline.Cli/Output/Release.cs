using System.Reflection;

namespace Heaveline.Cli.Output;

/// <summary>Which Heaveline this is.</summary>
internal static class Release
{
    /// <summary>Version without the commit.</summary>
    public static string Version { get; } =
        typeof(Release).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "unknown";
}
