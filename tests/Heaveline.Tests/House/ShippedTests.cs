using System.Text.Json.Nodes;
using System.Xml.Linq;

namespace Heaveline.Tests.House;

/// <summary>What goes out with the program is named, with its licence, in the files that go out with it.</summary>
public class ShippedTests
{
    // Part of ASP.NET Core, for which the bill's tool makes no line.
    private const string OfTheFramework = "Microsoft.AspNetCore.App.Internal.Assets";

    [Fact]
    public void Every_package_of_the_program_stands_in_the_notices_and_in_the_bill_with_its_version_and_nothing_else_does()
    {
        var locked = JsonNode.Parse(Text("src/Heaveline.Cli/packages.lock.json"))!["dependencies"]!.AsObject()
            .SelectMany(framework => framework.Value!.AsObject())
            .Where(package => package.Value!["type"]!.GetValue<string>() != "Project")
            .Select(package => $"{package.Key} {package.Value!["resolved"]}").Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.NotEmpty(locked);
        var notices = Text("THIRD-PARTY-NOTICES.txt").Split('\n');
        Assert.Empty(locked.Except(notices));

        var billed = JsonNode.Parse(Text("bill-of-materials.json"))!["components"]!.AsArray()
            .Select(component => $"{component!["name"]} {component["version"]}").Order(StringComparer.Ordinal);
        Assert.Equal(locked.Where(package => !package.StartsWith(OfTheFramework, StringComparison.Ordinal)), billed);
    }

    [Fact]
    public void Every_packable_project_takes_licence_notices_font_licence_and_bill_along()
    {
        var targets = Text("Directory.Build.targets");
        foreach (var file in new[] { "LICENSE", "THIRD-PARTY-NOTICES.txt", "bill-of-materials.json", "OFL.txt" })
        {
            Assert.Contains(file, targets, StringComparison.Ordinal);
        }

        Assert.Equal(
            ["Heaveline", "Heaveline.Cli", "Heaveline.Files"],
            Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.csproj", SearchOption.AllDirectories)
                .Where(file => XDocument.Load(file).Descendants("IsPackable").Any(said => said.Value == "true"))
                .Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void No_assembly_holds_a_commit_or_the_folder_it_was_built_in()
    {
        foreach (var assembly in Rooms.Order.Select(o => System.Reflection.Assembly.Load(o.Assembly)))
        {
            var bytes = File.ReadAllBytes(assembly.Location);
            Assert.Equal(-1, bytes.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(Checkout.Root + Path.DirectorySeparatorChar)));
            Assert.DoesNotContain(
                "+",
                System.Reflection.CustomAttributeExtensions.GetCustomAttribute<System.Reflection.AssemblyInformationalVersionAttribute>(assembly)!
                    .InformationalVersion,
                StringComparison.Ordinal);
        }
    }

    private static string Text(string file) => File.ReadAllText(Path.Combine(Checkout.Root, file)).ReplaceLineEndings("\n");
}
