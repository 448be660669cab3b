using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Files.Roads;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Figures;
using Heaveline.Tests.Press;

namespace Heaveline.Tests.Studies;

/// <summary>Two cars and the roads that come with the program, found by name without any file.</summary>
internal sealed class DrawnThings : IFinder
{
    private static readonly Dictionary<string, Car> Cars = new(StringComparer.Ordinal)
    {
        ["hazel"] = DrawnCars.Saloon,
        ["softer"] = DrawnCars.Saloon with { Name = "Hazel saloon, trimmed", Front = DrawnCars.Saloon.Front with { AntiRollBar = new(20000.0) } },
    };

    public IReadOnlyList<(string Name, string Caption)> Roads => [.. NamedRoads.All.Select(r => (r.Key, r.Value.Caption))];

    public Found<Car> Car(string name) => Found(name, Cars.GetValueOrDefault(name), builtIn: false);

    public Found<Road> Road(string name) => Found(name, NamedRoads.All.GetValueOrDefault(name), builtIn: true);

    private static Found<T> Found<T>(string name, T? thing, bool builtIn)
        where T : class => new()
        {
            Name = name,
            ShortName = name,
            Value = thing,
            Refusal = thing is null ? $"There is no {name}." : "",
            Inputs = thing is null ? [] : [new InputText { Name = $"{name}.yaml", Text = name, Sha256 = ReportSamples.Digest, BuiltIn = builtIn }],
        };
}
