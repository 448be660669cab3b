using System.Reflection;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.House;

public class RoomTests
{
    public static TheoryData<string> Assemblies => [.. Rooms.Order.Select(o => o.Assembly)];

    [Theory, MemberData(nameof(Assemblies))]
    public void No_room_looks_downstream(string assembly)
    {
        var offenders = new List<string>();
        foreach (var (user, used) in TypeUses.Of(Assembly.Load(assembly)))
        {
            if (Rooms.PlaceOf(assembly, user.Namespace ?? "") is { } from && Rooms.PlaceOf(assembly, used.Namespace ?? "") is { } to
                && !Rooms.May(assembly, from, to))
            {
                offenders.Add($"{user.FullName} uses {used.FullName}");
            }
        }

        // Constants leave no trace in what the compiler makes: they are found where they are named.
        foreach (var file in Checkout.Sources("src", assembly))
        {
            var from = Rooms.PlaceOf(assembly, Folder(file))!.Value;
            foreach (Match named in Regex.Matches(File.ReadAllText(file), @"(?<![\w./""])Heaveline(?:\.\w+)+", RegexOptions.Multiline))
            {
                if (!file.EndsWith("_Imports.razor", StringComparison.Ordinal) && Rooms.PlaceOf(assembly, named.Value) is { } to
                    && !Rooms.May(assembly, from, to))
                {
                    offenders.Add($"{Checkout.Relative(file)} names {named.Value}");
                }
            }
        }

        Report(offenders);
    }

    [Theory, MemberData(nameof(Assemblies))]
    public void Every_type_stands_in_the_room_of_its_folder(string assembly)
    {
        Report(Assembly.Load(assembly).GetTypes()
            .Where(type => type.Namespace?.StartsWith(assembly, StringComparison.Ordinal) == true && Rooms.PlaceOf(assembly, type.Namespace) is null)
            .Select(type => $"{type.FullName} stands in no known room."));
        foreach (var file in Checkout.Sources("src", assembly))
        {
            var stated = Regex.Match(File.ReadAllText(file), @"^@?namespace ([\w.]+)", RegexOptions.Multiline);
            Assert.True(Rooms.PlaceOf(assembly, Folder(file)) is not null, $"{Checkout.Relative(file)} stands in no known room.");
            Assert.True(
                !stated.Success || Rooms.PlaceOf(assembly, stated.Groups[1].Value) == Rooms.PlaceOf(assembly, Folder(file)),
                $"{Checkout.Relative(file)} states {stated.Value}.");
        }
    }

    [Fact]
    public void Every_assembly_and_every_room_in_the_order_is_there()
    {
        Assert.Equal(
            Directory.EnumerateDirectories(Path.Combine(Checkout.Root, "src"))
                .Select(folder => Path.GetFileName(folder)).Order(StringComparer.Ordinal),
            Rooms.Order.Select(o => o.Assembly).Append(Rooms.Native).Order(StringComparer.Ordinal));
        Report(Rooms.Order.SelectMany(o => o.InOrder.Select(room => Path.Combine([Checkout.Root, "src", o.Assembly, .. room.Split('.')])))
            .Where(folder => !Directory.Exists(folder))
            .Select(folder => $"{Checkout.Relative(folder)} is gone: take it out of the order."));
    }

    [Theory]
    [InlineData("Heaveline.Web", "Heaveline.Web.Pages.Cars", "Heaveline.Web.Pages", false)]
    [InlineData("Heaveline.Web", "Heaveline.Web.Pages", "Heaveline.Web.Pages.Cars", true)]
    [InlineData("Heaveline", "Heaveline.Cars", "Heaveline.Roads", false)]
    [InlineData("Heaveline", "Heaveline.Roads", "Heaveline.Cars", false)]
    [InlineData("Heaveline", "Heaveline.Measures.Comfort", "Heaveline.Passes", true)]
    [InlineData("Heaveline.Press", "Heaveline.Press.Sheets", "Heaveline.Press", false)]
    public void A_room_may_use_what_stands_before_it(string assembly, string user, string used, bool may) =>
        Assert.Equal(may, Rooms.May(assembly, Rooms.PlaceOf(assembly, user)!.Value, Rooms.PlaceOf(assembly, used)!.Value));

    [Fact]
    public void Uses_are_found_wherever_they_stand() => Assert.Superset(
        new HashSet<(Type, Type)>
        {
            (typeof(RoomTests), typeof(Checkout)), // called
            (typeof(RoomTests), typeof(TypeUses)), // called, generic result
            (typeof(Cli.KeptFigureTests), typeof(Cli.Spoken)), // in a lambda or a body
            (typeof(AnyCarTests), typeof(AnyCar)), // a field's value
        },
        TypeUses.Of(typeof(RoomTests).Assembly).ToHashSet());

    [Fact]
    public void Assemblies_point_one_way()
    {
        var order = Rooms.Order.Select(o => o.Assembly).ToList();
        var offenders = new List<string>();
        foreach (var project in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.csproj", SearchOption.AllDirectories))
        {
            var name = Path.GetFileNameWithoutExtension(project);
            var place = order.IndexOf(name == Rooms.Native ? "Heaveline.Web" : name);
            Assert.True(place >= 0, $"{project} has no place in the order.");
            foreach (Match use in Regex.Matches(File.ReadAllText(project), @"ProjectReference Include=""[^""]*?([\w.]+)\.csproj"""))
            {
                if (order.IndexOf(use.Groups[1].Value) >= place)
                {
                    offenders.Add($"{Checkout.Relative(project)} uses {use.Groups[1].Value}");
                }
            }
        }

        Report(offenders);
    }

    // "src/Heaveline.Files/Yaml/Key.cs" stands in the folder Heaveline.Files.Yaml.
    private static string Folder(string file) => string.Join('.', Checkout.Relative(file).Split('/')[1..^1]);

    private static void Report(IEnumerable<string> offenders)
    {
        var all = offenders.ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }
}
