using System.Reflection;

namespace Heaveline.Cli.Output;

/// <summary>Which Heaveline this is.</summary>
internal static class Release
{
    /// <summary>Version without the commit.</summary>
    public static string Version { get; } =
        typeof(Release).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "unknown";

    /// <summary>The version, and which build of the core it has: equal ones do the same sums in the same order.</summary>
    public static string Build { get; } = $"{Version} ({typeof(Quantities.NoAnswerException).Module.ModuleVersionId.ToString("N")[..8]})";
}
