using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Press;

namespace Heaveline.Tests.Studies;

/// <summary>Cars and roads that a test made, found by their names; no files anywhere.</summary>
internal sealed class KnownThings(params Car[] cars) : IFinder
{
    /// <summary>A round hump of 60 mm, by the name of "hump".</summary>
    public static Road Hump { get; } = Heaveline.Roads.Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) });

    public Found<Car> Car(string name)
    {
        var car = cars.FirstOrDefault(c => c.Name == name);
        return new Found<Car>
        {
            Name = name, Value = car, Refusal = car is null ? $"There is no car '{name}'." : "", IsMissing = car is null, Inputs = [Text(name)],
        };
    }

    public Found<Road> Road(string name) =>
        new()
        {
            Name = name,
            Value = name == "hump" ? Hump : null,
            Refusal = name == "hump" ? "" : $"There is no road '{name}'.",
            Inputs = [Text(name)],
        };

    private static InputText Text(string name) => new() { Name = $"{name}.yaml", Text = name, Sha256 = ReportSamples.Digest };

    /// <summary>Words for choices: name, words, name, words.</summary>
    public static Given Words(params string[] words) => new(words.Chunk(2).Select(pair => (pair[0], (string?)pair[1])));
}
