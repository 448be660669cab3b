using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Measures;

namespace Heaveline.Web.Pages.Garages;

/// <summary>What a sheet's car comes to, and what each number of the sheet costs in doubt of it.</summary>
/// <param name="Load">The load that it is told for: the heaviest one.</param>
/// <param name="Ratio">Rear over front ride frequency with its doubt, by slopes along each source of error (JCGM 100:2008, clause 5).</param>
/// <param name="Damping">The rear damping ratio in the same way.</param>
internal sealed record SheetFinding(string Load, FirstOrderResult Ratio, FirstOrderResult Damping)
{
    /// <summary>What a car comes to.</summary>
    /// <exception cref="Quantities.NoAnswerException">It cannot stand so.</exception>
    public static SheetFinding Of(Car car)
    {
        var load = car.LoadStates[^1];
        var found = FirstOrder.Of(car, load, [AxleCatalogue.FrequencyRatio, AxleCatalogue.Damping(AxleEnd.Rear)]);
        return new SheetFinding(load.Name, found.Results[0], found.Results[1]);
    }

    /// <summary>Share of a result's variance that a number of the sheet makes, both axles together (–).</summary>
    public static double ShareOf(FirstOrderResult result, SheetLine line) => result.Shares
        .Where(share => share.Source.Amounts.Any(amount => line.Doubts.Contains(amount.Path))).Sum(share => share.Share);

    /// <summary>The number that makes most of the ratio's doubt, with its share; null where none makes any.</summary>
    public (SheetLine Line, double Share)? Next =>
        GarageSheet.Lines.Select(line => (line, Share: ShareOf(Ratio, line))).MaxBy(one => one.Share) is { Share: > 0.0 } most ? most : null;
}
