using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Cars;

/// <summary>The numbers of one car at every load state, with their doubts once those are known.</summary>
public sealed record CarNumbers
{
    /// <summary>The car.</summary>
    public required Car Car { get; init; }

    /// <summary>One model per load state that the car can bear, as described first.</summary>
    public required IReadOnlyList<RideModel> Models { get; init; }

    /// <summary>Load states that it cannot bear, each with the reason.</summary>
    public required IReadOnlyList<string> Unbearable { get; init; }

    /// <summary>Rows with a value in at least one load state.</summary>
    public required IReadOnlyList<(string Heading, IReadOnlyList<NumberLine> Lines)> Parts { get; init; }

    /// <summary>The car at its load states, with its table: what a reader takes away; null when it can bear none.</summary>
    public required Figure? Figure { get; init; }

    /// <summary>Why there are no doubts beside the numbers; null when there are, or when they are not worked out yet.</summary>
    public string? NoDoubts { get; init; }

    /// <summary>Whether the doubts have been worked out.</summary>
    public bool HasDoubts { get; init; }

    /// <summary>Names of the load states.</summary>
    public IEnumerable<string> Loads => Models.Select(model => model.Load.Name);

    /// <summary>The numbers of the car as stated.</summary>
    public static CarNumbers Of(Car car)
    {
        var models = new List<RideModel>();
        var unbearable = new List<string>();
        foreach (var load in car.LoadStates.Prepend(LoadState.Reference))
        {
            try
            {
                models.Add(RideModel.Of(car, load));
            }
            catch (RefusedValueException refusal)
            {
                unbearable.Add($"{load.Name}: {refusal.Message}");
            }
        }

        List<CarAtRest> rests = [.. models.Select(model => new CarAtRest(model))];
        return new CarNumbers
        {
            Car = car,
            Models = models,
            Unbearable = unbearable,
            Figure = models.Count > 0 ? LoadStatesFigure.Of(models) : null,
            Parts = [.. RestCatalogue.Groups.Select(group => (group.Title, (IReadOnlyList<NumberLine>)[.. group.Measures
                .Select(measure => (Measure: measure, Values: rests.Select(measure.Of).ToList()))
                .Where(row => !row.Measure.IsNothing(row.Values))
                .Select(row => new NumberLine(
                    row.Measure, [.. row.Values.Select(row.Measure.Shown).Select(v => v is { } shown ? new NumberCell(shown, 0.0) : null)]))]))],
        };
    }

    /// <summary>The same with doubts: two standard deviations by slopes along each source of error (JCGM 100:2008, clause 5).</summary>
    public CarNumbers WithDoubts()
    {
        if (!CarDoubts.Of(Car).AreStated)
        {
            return this with { HasDoubts = true, NoDoubts = "The file states no doubts. Write them behind the values, and each number here gets its band." };
        }

        var measures = Parts.SelectMany(part => part.Lines).Select(line => line.Measure).ToList();
        try
        {
            var studies = Models.Select(model => FirstOrder.Of(Car, model.Load, measures)).ToList();
            NumberLine Doubtful(NumberLine line)
            {
                var (at, unit) = (measures.IndexOf(line.Measure), line.Measure.Unit);
                NumberCell? WithDoubt(NumberCell? cell, double deviation) =>
                    cell is null || !double.IsFinite(deviation) ? cell : cell with { HalfWidth = 2.0 * unit.Of(deviation) };
                return line with { Cells = [.. line.Cells.Select((cell, k) => WithDoubt(cell, studies[k].Results[at].StandardDeviation))] };
            }

            return this with { HasDoubts = true, Parts = [.. Parts.Select(part => (part.Heading, (IReadOnlyList<NumberLine>)[.. part.Lines.Select(Doubtful)]))] };
        }
        catch (RefusedValueException refusal)
        {
            return this with { HasDoubts = true, NoDoubts = $"The doubts cannot be followed: a car at their edge could not stand. {refusal.Message}" };
        }
    }
}
