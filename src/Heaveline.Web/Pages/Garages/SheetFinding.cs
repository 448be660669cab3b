using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Garages;

/// <summary>What a sheet's car comes to, and what each number of the sheet costs in doubt of it: what a study of its file's doubts says.</summary>
/// <param name="Load">The load that it is told for: the one that a car file is read with where none is named, its first.</param>
/// <param name="Ratio">Rear over front ride frequency with its doubt.</param>
/// <param name="Damping">The rear damping ratio in the same way.</param>
/// <param name="OnStops">Loads under which it stands on bump stops, each with the ends that do: "the rear stands".</param>
internal sealed record SheetFinding(string Load, DoubtResult Ratio, DoubtResult Damping, IReadOnlyList<(string Load, string Ends)> OnStops)
{
    /// <summary>Share of a variance below which a number is left in peace (–).</summary>
    public const double Little = 0.005;

    /// <summary>What a car comes to.</summary>
    /// <exception cref="NoAnswerException">It cannot stand so.</exception>
    public static SheetFinding Of(Car car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var asked = new DoubtAsked { Car = new LoadedCar(car.Name, car, LoadedCar.UsualLoad(car)) };
        var drawn = JointStudy.Of(
            [CarDoubts.Of(car, asked.Car.Load)], [AxleCatalogue.FrequencyRatio, AxleCatalogue.Damping(AxleEnd.Rear)], asked.Draws, asked.Seed);
        var stops = car.LoadStates.Select(load => (load.Name, Ends: StandingStops.Words(RideModel.Of(car, load)))).Where(one => one.Ends.Length > 0);
        return new SheetFinding(asked.Car.Load.Name, drawn.Cars[0][0].Shown(), drawn.Cars[0][1].Shown(), [.. stops]);
    }

    /// <summary>Share of a result's variance that a number of the sheet makes, both axles together (–).</summary>
    public static double ShareOf(DoubtResult result, SheetLine line) =>
        result.Shares.Where(share => IsOf(share.Source, line)).Sum(share => share.Share);

    /// <summary>
    /// What to measure better next: the number of the sheet that makes most of the ratio's variance, counted from 1, both axles together, or 0 for
    /// what the sheet does not ask; its words; its share (–). Null where none makes half a per cent of it.
    /// </summary>
    public (int Number, string Words, double Share)? Next
    {
        get
        {
            var most = GarageSheet.Lines.Select((line, i) => (Number: i + 1, line.Words, Share: ShareOf(Ratio, line)))
                .Concat(Ratio.Shares.Where(share => !GarageSheet.Lines.Any(line => IsOf(share.Source, line)))
                    .Select(share => (Number: 0, share.Source.Words, share.Share)))
                .MaxBy(one => one.Share);
            return most.Share >= Little ? most : null;
        }
    }

    private static bool IsOf(DoubtSource source, SheetLine line) => source.Amounts.Any(amount => line.Doubts.Contains(amount.Path));
}
