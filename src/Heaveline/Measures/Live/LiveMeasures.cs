using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>Measures of a crossing as their own definitions make them, noted for whoever moves a live car's sliders.</summary>
internal sealed class LiveMeasures : ILiveNumbers
{
    private readonly Road road;
    private readonly double sampleStep;

    /// <param name="model">The car as it stands.</param>
    /// <param name="road">The road.</param>
    /// <param name="sampleStep">Time from one sample to the next, s.</param>
    /// <param name="wanted">The measures; those that cannot be noted are left out.</param>
    public LiveMeasures(RideModel model, Road road, double sampleStep, IEnumerable<Measure<Pass>> wanted)
    {
        (this.road, this.sampleStep) = (road, sampleStep);
        Measures = [.. wanted.Where(measure => IsNoted(measure, model))];
    }

    /// <summary>The measures that are noted, in the order of their numbers.</summary>
    public IReadOnlyList<Measure<Pass>> Measures { get; }

    /// <inheritdoc/>
    public IReadOnlyList<RecordSignal> SignalsOf(RideModel model)
    {
        using var writing = new Record().Begin();
        return [.. Curves(model, 0).Curves.Signals.Select(signal => new RecordSignal(signal.Reading, signal.Standing))];
    }

    /// <inheritdoc/>
    public LiveNumbers Note(RideModel model, int answers)
    {
        var (curves, numbers) = Curves(model, answers);
        return new(curves.Questions, curves.Windows, numbers);
    }

    private (NotedCurves Curves, int[] Numbers) Curves(RideModel model, int answers)
    {
        var curves = new NotedCurves(model, road, sampleStep, answers);
        return (curves, [.. Measures.Select(measure => measure.InFlight!(curves).Lane.Line)]);
    }

    private bool IsNoted(Measure<Pass> measure, RideModel model)
    {
        try
        {
            using var writing = new Record().Begin();
            return measure.InFlight?.Invoke(new NotedCurves(model, road, sampleStep, 0)) is not null;
        }
        catch (NotSupportedException)
        {
            // It waits for the program.
            return false;
        }
    }
}
