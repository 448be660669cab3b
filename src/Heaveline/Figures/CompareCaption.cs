using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What stands under a comparison: each one's headline numbers and the change against the first.</summary>
internal static class CompareCaption
{
    /// <summary>Road, speed, numbers, what the shading means.</summary>
    public static string Of(IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes)
    {
        var reference = passes[0];
        var bands = reference.Measures.Pitch.Hit is null
            ? null
            : EventBands.Meaning
                + (passes.All(one => SameBands(one.Measures, reference.Measures)) ? "" : $" The shading is that of {reference.Name}.");
        string?[] sentences =
        [
            $"Road: {reference.Pass.RoadCaption}, at {Printed.Speed(reference.Pass.Speed)}.",
            Cars(passes),
            Numbers(passes),
            bands,
            .. from one in passes where one.Pass.Outcome != PassOutcome.Completed select $"{one.Name} stopped early. {one.Pass.OutcomeSentence}",
        ];
        return string.Join(' ', sentences.OfType<string>());
    }

    /// <summary>The two headline numbers of each, with their change.</summary>
    public static string Numbers(IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes)
    {
        var (rms, peak) = (Headline.RmsPitch(passes[0].Pass), Headline.PeakAcceleration(passes[0].Pass));
        return $"{FirstLetter.Raised(rms.CaptionLabel)}: {Row(passes, rms, Printed.Degrees)}. "
            + $"{FirstLetter.Raised(peak.CaptionLabel)}: {Row(passes, peak, Printed.PitchAcceleration)}.";
    }

    private static string Row(
        IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes, Measure<Pass> measure, Func<double, string> print)
    {
        var reference = Headline.Of(measure, passes[0].Pass);
        return string.Join("; ", passes.Select((one, i) =>
        {
            if (Headline.Of(measure, one.Pass) is not { } value)
            {
                return $"{one.Name} not recorded to its end";
            }

            var change = i > 0 && reference is { } still && Printed.PerCentChange(value, still) is { } text ? $" ({text})" : "";
            return $"{one.Name} {print(value)}{change}";
        }));
    }

    /// <summary>Which car and load each is of; names of variants may hide it.</summary>
    public static string? Cars(IReadOnlyList<(string Name, Pass Pass, PassMeasures Measures)> passes)
    {
        string[] cars = [.. passes.Select(one => $"{one.Pass.Model.Car.Name}, {one.Pass.Model.Load.Name}").Distinct()];
        if (cars.Length == 1)
        {
            return $"Car: {cars[0]}.";
        }

        // Where each is called after its car, only the load is left to say.
        if (passes.All(one => one.Name == one.Pass.Model.Car.Name))
        {
            string[] loads = [.. passes.Select(one => one.Pass.Model.Load.Name).Distinct()];
            return loads.Length == 1
                ? $"Load: {loads[0]}."
                : string.Concat(passes.Select(one => $"{one.Name}: {one.Pass.Model.Load.Name}. ")).TrimEnd();
        }

        return string.Concat(passes.Select(one => $"{one.Name}: {one.Pass.Model.Car.Name}, {one.Pass.Model.Load.Name}. ")).TrimEnd();
    }

    private static bool SameBands(PassMeasures one, PassMeasures other) =>
        one.Pitch.Hit?.Window == other.Pitch.Hit?.Window && one.Pitch.Settling?.Window == other.Pitch.Settling?.Window;
}
