using System.Reflection;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.House;

/// <summary>What the library promises: the rooms of <see cref="Rooms.Promised"/>, whole, and no other.</summary>
public class PromiseTests
{
    private const BindingFlags Own =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly string Core = Path.Combine(Checkout.Root, "src", "Heaveline");

    [Fact]
    public void What_is_promised_speaks_of_nothing_else()
    {
        var offenders = PromisedTypes()
            .SelectMany(type => Spoken(type).SelectMany(Parts).Distinct()
                .Where(used => used.Assembly == type.Assembly && !used.IsGenericParameter && !IsPromised(used))
                .Select(used => $"{type.FullName} speaks of {used.FullName}"))
            .ToList();
        Assert.True(offenders.Count == 0, string.Join('\n', offenders));
    }

    [Fact]
    public void Rooms_that_are_not_promised_are_not_listed()
    {
        var unlisted = Regex.Match(File.ReadAllText(Path.Combine(Core, ".editorconfig")), @"^\[\{([\w,]+)\}/\*\*\.cs\]", RegexOptions.Multiline);
        Assert.Equal(
            Rooms.Order.Single(o => o.Assembly == "Heaveline").InOrder.Except(Rooms.Promised).Order(StringComparer.Ordinal),
            unlisted.Groups[1].Value.Split(',').Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_promised_type_is_listed_and_no_other()
    {
        var listed = File.ReadLines(Path.Combine(Core, "PublicAPI.Unshipped.txt"))
            .Concat(File.ReadLines(Path.Combine(Core, "PublicAPI.Shipped.txt")))
            .ToHashSet(StringComparer.Ordinal);
        Assert.All(PromisedTypes().Where(t => !t.IsGenericType), type => Assert.Contains(type.FullName!.Replace('+', '.'), listed));
        var ours = Assembly.Load("Heaveline").GetExportedTypes()
            .Where(type => !IsPromised(type))
            .Select(type => type.FullName!.Replace('+', '.'));
        Assert.DoesNotContain(ours, listed.Contains);
    }

    [Fact]
    public void The_page_names_the_promised_namespaces() => Assert.Equal(
        Rooms.Promised.Select(room => room.Length == 0 ? "`Heaveline`" : $"`Heaveline.{room}`").Order(StringComparer.Ordinal),
        Regex.Matches(File.ReadAllText(Path.Combine(Checkout.Root, "docs", "library.md")), @"^\* (`Heaveline[\w.]*`):", RegexOptions.Multiline)
            .Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal));

    private static IEnumerable<Type> PromisedTypes() => Assembly.Load("Heaveline").GetExportedTypes().Where(IsPromised);

    private static bool IsPromised(Type type) =>
        Rooms.Promised.Contains(type.Namespace == "Heaveline" ? "" : (type.Namespace ?? "").Replace("Heaveline.", "", StringComparison.Ordinal));

    // What a caller can see of a type: what it is, and the types of its public and protected members.
    private static IEnumerable<Type> Spoken(Type type) =>
    [
        .. type.BaseType is { } above ? [above] : Type.EmptyTypes,
        .. type.GetInterfaces(),
        .. type.GetFields(Own).Where(f => f.IsPublic || f.IsFamily || f.IsFamilyOrAssembly).Select(f => f.FieldType),
        .. type.GetConstructors(Own).Where(IsSeen).SelectMany(c => c.GetParameters()).Select(p => p.ParameterType),
        .. type.GetMethods(Own).Where(IsSeen).SelectMany(m => m.GetParameters().Select(p => p.ParameterType).Append(m.ReturnType)),
    ];

    private static bool IsSeen(MethodBase method) => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!) : [type, .. type.GetGenericArguments().SelectMany(Parts)];
}
