using System.Text.RegularExpressions;

namespace Heaveline.Tests.House;

public class RoomTests
{
    // Data walks through the rooms once, forwards: a room may use those before it in this list, and itself.
    private static readonly string[] Order =
        ["Quantities", "Numerics", "Cars", "Roads", "Models", "Modes", "Passes", "Rides", "Measures", "Tuning", "Doubts", "Rules", "Causes", "Figures", "Answers", "Studies", "Reports"];

    [Fact]
    public void No_room_of_the_core_looks_downstream()
    {
        var offenders = new List<string>();
        foreach (var file in Checkout.Sources("src", "Heaveline"))
        {
            var room = Checkout.Relative(file).Split('/')[2];
            var place = Array.IndexOf(Order, room);
            Assert.True(place >= 0, $"{Checkout.Relative(file)} stands in no known room.");
            foreach (Match use in Regex.Matches(File.ReadAllText(file), @"^using (?:static )?Heaveline\.(\w+)", RegexOptions.Multiline))
            {
                var used = Array.IndexOf(Order, use.Groups[1].Value);
                if (used > place || (room is "Roads" && use.Groups[1].Value is "Cars") || (room is "Cars" && use.Groups[1].Value is "Roads"))
                {
                    offenders.Add($"{Checkout.Relative(file)} uses {use.Groups[1].Value}");
                }
            }
        }

        Assert.True(offenders.Count == 0, string.Join('\n', offenders));
    }

    [Fact]
    public void Assemblies_point_one_way()
    {
        string[] order = ["Heaveline", "Heaveline.Files", "Heaveline.Press", "Heaveline.Cluster", "Heaveline.Web", "Heaveline.Cli"];
        var offenders = new List<string>();
        foreach (var project in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.csproj", SearchOption.AllDirectories))
        {
            var place = Array.IndexOf(order, Path.GetFileNameWithoutExtension(project));
            Assert.True(place >= 0, $"{project} has no place in the order.");
            foreach (Match use in Regex.Matches(File.ReadAllText(project), @"ProjectReference Include=""[^""]*?([\w.]+)\.csproj"""))
            {
                if (Array.IndexOf(order, use.Groups[1].Value) >= place)
                {
                    offenders.Add($"{Checkout.Relative(project)} uses {use.Groups[1].Value}");
                }
            }
        }

        Assert.True(offenders.Count == 0, string.Join('\n', offenders));
    }
}
