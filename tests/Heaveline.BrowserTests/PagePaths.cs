using System.Reflection;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;

namespace Heaveline.BrowserTests;

/// <summary>Where the pages stand, read off the pages themselves: a new one is attacked like the others.</summary>
internal static class PagePaths
{
    /// <summary>All but that of addresses where nothing stands; that of the garage is "/".</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. typeof(ServeOptions).Assembly.GetTypes().Select(t => t.GetCustomAttribute<RouteAttribute>()?.Template).OfType<string>()
            .Where(path => path != "/no-such-page").Order(StringComparer.Ordinal),
    ];

    /// <summary>Those whose address says what they show.</summary>
    public static IEnumerable<string> Asked => All.Where(path => path != "/");
}
