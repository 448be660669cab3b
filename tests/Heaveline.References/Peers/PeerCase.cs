using System.Text.Json;
using Heaveline.Models;
using Heaveline.Passes.Exact;

namespace Heaveline.References.Peers;

/// <summary>One case of bench/peers as the numbers of the ride model, built from the case file alone: no car, no trim solver.</summary>
internal sealed class PeerCase
{
    private PeerCase(RideNumbers numbers, ExactRoad road, double speed, int outputs, double outputStep, bool isHalf)
    {
        Numbers = numbers;
        Road = road;
        Speed = speed;
        Outputs = outputs;
        OutputStep = outputStep;
        IsHalf = isHalf;
    }

    public RideNumbers Numbers { get; }

    public ExactRoad Road { get; }

    public double Speed { get; }

    /// <summary>Samples from t = 0 to the end, both included.</summary>
    public int Outputs { get; }

    public double OutputStep { get; }

    /// <summary>Whether the results have one wheel an axle.</summary>
    public bool IsHalf { get; }

    public static PeerCase Read(string name)
    {
        using var file = JsonDocument.Parse(File.ReadAllText(PeerFiles.Case(name)));
        var root = file.RootElement;
        var isHalf = root.GetProperty("model").GetString() == "half";
        var numbers = PeerNumbers.From(root, isHalf);
        var perSecond = root.GetProperty("outputs_per_second").GetInt32();
        var speed = root.GetProperty("speed").GetDouble();
        var outputs = (int)Math.Round(root.GetProperty("duration").GetDouble() * perSecond) + 1;
        return new PeerCase(numbers, PeerRoad.From(root.GetProperty("road")), speed, outputs, 1.0 / perSecond, isHalf);
    }
}
