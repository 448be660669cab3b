using System.Reflection;

namespace Heaveline.Tests.House;

/// <summary>
/// The rooms of each assembly, in the order in which data walks through them: a room may use those before it in its list, and itself.
/// </summary>
/// <remarks>
/// A room is a namespace below that of its assembly, with all below it that is no room of its own; the empty name is the assembly's own namespace.
/// </remarks>
internal static class Rooms
{
    /// <summary>The rooms in order, by assembly; the assemblies in order too.</summary>
    public static IReadOnlyList<(string Assembly, string[] InOrder)> Order { get; } =
    [
        ("Heaveline",
        [
            "Quantities", "Numerics", "Pieces", "Cars", "Roads", "Worksheets", "Elements", "Models", "Modes", "Passes", "Recording", "Rides",
            "Measures", "Parts", "Tuning", "Drives", "Films", "Doubts", "Ties", "Rules", "Causes", "Search", "Figures", "Answers", "Studies",
            "Reports", "",
        ]),
        ("Heaveline.Files",
        [
            "", "Forms", "Yaml", "Editing", "Cars", "Roads", "Ties", "Parts", "Choosing", "Drives", "Films", "Crews", "Garages", "Reporting",
            "Keeping",
        ]),
        ("Heaveline.Finding", [""]),
        ("Heaveline.Gpu", ["Lanes", "Kernels", ""]),
        ("Heaveline.Cluster", [""]),
        ("Heaveline.Camera", ["Frames", "Drawn", "Tracks", "Stills", ""]),
        ("Heaveline.Press", ["Colours", "Type", "Paper", "Scales", "Curves", "Plates", "Sheets", ""]),
        ("Heaveline.Web",
        [
            "", "Serving", "Guard", "Tuning", "Studying", "Charts", "Help", "Pages.Parts", "Pages.Worksheets", "Pages.Garages", "Pages.Cars",
            "Pages.Passes", "Pages.Rules", "Pages.Links", "Pages.Chosen", "Pages.Rides", "Pages.Roads", "Pages.Drives", "Pages.Films",
            "Pages.Reports", "Pages.Stories", "Pages", "Frame", "Host",
        ]),
        ("Heaveline.Cli", ["Output", "Commands", ""]),
    ];

    /// <summary>
    /// The program compiled ahead of time from the sources of Heaveline.Cli, outside the solution: it stands where the pages do and uses none.
    /// </summary>
    public const string Native = "Heaveline.Native";

    /// <summary>The rooms of the core that the library promises, whole: docs/library.md.</summary>
    public static IReadOnlyList<string> Promised { get; } = ["", "Quantities", "Cars", "Roads"];

    /// <summary>Rooms beside each other: neither uses the other.</summary>
    public static IReadOnlyList<(string Assembly, string One, string Other)> Apart { get; } = [("Heaveline", "Cars", "Roads")];

    /// <summary>The place of a name's room in the order of its assembly; null when it stands in none.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="name">A namespace, or a type with its namespace.</param>
    public static int? PlaceOf(string assembly, string name)
    {
        // What the compiler makes for the types of a page stands beside it under a name of its own.
        name = name.StartsWith("__Blazor.", StringComparison.Ordinal) ? name["__Blazor.".Length..] : name;
        if (name != assembly && !name.StartsWith(assembly + ".", StringComparison.Ordinal))
        {
            return null;
        }

        var below = name == assembly ? "" : name[(assembly.Length + 1)..];
        var rooms = Order.Single(o => o.Assembly == assembly).InOrder;
        var room = rooms.Where(r => r.Length > 0 && (below == r || below.StartsWith(r + ".", StringComparison.Ordinal))).MaxBy(r => r.Length);
        // A folder that is no room yet, or another assembly, stands in none.
        var place = Array.IndexOf(rooms, room ?? (below.Length == 0 || Assembly.Load(assembly).GetType(name) is not null ? "" : null));
        return place < 0 ? null : place;
    }

    /// <summary>Whether a room may use another.</summary>
    public static bool May(string assembly, int user, int used)
    {
        var rooms = Order.Single(o => o.Assembly == assembly).InOrder;
        return used <= user && !Apart.Any(
            a => a.Assembly == assembly && ((a.One, a.Other) == (rooms[user], rooms[used]) || (a.Other, a.One) == (rooms[user], rooms[used])));
    }
}
