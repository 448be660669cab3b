using BenchmarkDotNet.Attributes;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Bench;

/// <summary>One what-if, warm: from the trimmed model to all traces of a 4 s pass.</summary>
public class SinglePass
{
    private static readonly PassOptions FourSeconds = new() { Method = FixedStep.Once, Record = new() { Duration = 4.0 } };
    private readonly RideModel model = RideModel.Of(Saloon.Of());
    private readonly RideModel rubbing = RideModel.Of(Saloon.Rubbing(60.0));

    [Benchmark(Baseline = true, Description = "pass, 4 s, all traces")]
    public int Traces() => Pass.Of(model, Saloon.Hump, Saloon.Speed, FourSeconds).Count;

    [Benchmark(Description = "the same with 60 N of friction at every wheel")]
    public int WithFriction() => Pass.Of(rubbing, Saloon.Hump, Saloon.Speed, FourSeconds).Count;

    [Benchmark(Description = "the same with its own error (half the step count again)")]
    public int TracesAndError() => Pass.Of(model, Saloon.Hump, Saloon.Speed, FourSeconds with { Method = FixedStep.Default }).Count;

    [Benchmark(Description = "pass and every measure")]
    public PassMeasures Measured() => PassMeasures.Of(Pass.Of(model, Saloon.Hump, Saloon.Speed, FourSeconds));

    [Benchmark(Description = "trim and tangent of a changed car")]
    public RideModel Model() => RideModel.Of(Saloon.Of());
}
