using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Studies;

/// <summary>The least load of the tyres of each axle over the use cases of a study, as the question of a pass tells it, and in which it is.</summary>
/// <param name="Axles">Front, then rear: the load over that at trim (–), and the use case.</param>
internal sealed record ChooseGrip(ImmutableArray<(double Least, string Case)> Axles)
{
    // A fall by more than this of the load at trim is said with the setup itself (–). Judged by eye, no source.
    private const double Much = 0.05;

    /// <summary>Of a car as stated.</summary>
    /// <param name="doer">Drives it.</param>
    /// <param name="car">The car, with or without parts.</param>
    /// <param name="use">The use cases.</param>
    public static ChooseGrip Of(ChooseDoer doer, Car car, ChooseUse use)
    {
        var measures = Measures(car);
        var rows = doer.Crossings(car, measures);
        return new ChooseGrip([.. measures.Select((_, k) => rows.Zip(use.Crossings, (row, one) => (row[k], one.Name)).MinBy(one => one.Item1))]);
    }

    /// <summary>A row an axle, a column a car.</summary>
    /// <param name="findings">What was found.</param>
    public static IReadOnlyList<FactTable> Table(ChooseFindings findings)
    {
        if (findings.List.IsEmpty)
        {
            return [];
        }

        var table = new FactTable(
            "Least tyre load over the use cases, as stated", [ChooseParts.AsItIs, .. findings.List.Select(one => one.Letter)]);
        ChooseGrip[] all = [findings.Grip, .. findings.List.Select(one => one.Grip)];
        foreach (var (k, measure) in Measures(findings.Asked.Car).Index())
        {
            table.Add(measure, all.Select(one => one.Axles[k].Least));
        }

        return [table];
    }

    /// <summary>The same of the best setup in words, with the use cases; null without a shortlist.</summary>
    /// <param name="findings">What was found.</param>
    public static Sentence? Words(ChooseFindings findings)
    {
        if (findings.List is not [var best, ..])
        {
            return null;
        }

        var measures = Measures(findings.Asked.Car);
        string At(ChooseGrip grip, int k) =>
            $"{measures[k].Print(measures[k].Unit.Of(grip.Axles[k].Least))}{measures[k].Unit.Suffix} in '{grip.Axles[k].Case}'";
        return new("least-load", "Least tyre load over the use cases: "
            + string.Join("; ", Places(findings.Asked.Car).Select((place, k) =>
                $"{place.Name} {At(best.Grip, k)} with A, {At(findings.Grip, k)} as it is")) + ".");
    }

    /// <summary>Of which axle a setup leaves the tyres much less of their load than they have now, a clause; null where of none.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="one">The setup.</param>
    public static string? Fall(ChooseFindings findings, ChooseTold one)
    {
        var measures = Measures(findings.Asked.Car);
        string Print(ChooseGrip grip, int k) => measures[k].Print(measures[k].Unit.Of(grip.Axles[k].Least)) + measures[k].Unit.Suffix;
        string[] falls =
        [
            .. Places(findings.Asked.Car).Index()
                .Where(place => findings.Grip.Axles[place.Index].Least - one.Grip.Axles[place.Index].Least > Much)
                .Select(place => $"{place.Item.Name} from {Print(findings.Grip, place.Index)} to {Print(one.Grip, place.Index)} "
                    + $"in '{one.Grip.Axles[place.Index].Case}'"),
        ];
        return falls.Length == 0 ? null : $"the least tyre load falls: {string.Join(", ", falls)}";
    }

    private static IReadOnlyList<WheelPlace> Places(Car car) => WheelPlace.Axles(car.Kind != VehicleKind.TwoWheeler);

    private static IReadOnlyList<Measure<Pass>> Measures(Car car) =>
        [.. Places(car).Select(place => WheelCatalogue.Of(place).Single(measure => measure.Key == $"{place.Key}-least-load"))];
}
