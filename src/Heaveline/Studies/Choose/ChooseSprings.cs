using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Parts;

namespace Heaveline.Studies;

/// <summary>Springs of a setup of which the files do not tell whether they stay in their seats and their coils apart.</summary>
internal static class ChooseSprings
{
    /// <summary>Their names, front first.</summary>
    /// <param name="fitted">The car with its parts.</param>
    public static IReadOnlyList<string> Unknown(Fitted fitted) =>
    [
        .. fitted.Parts.Where(part => part.Place.Sort() == PartSort.Spring && !part.IsThere && IsUnknown(fitted.Car, part.Place.End()!.Value))
            .OrderBy(part => part.Place).Select(part => part.Option.Name),
    ];

    /// <summary>The condition on which a setup may be bought, a clause; blank where its fit is known.</summary>
    /// <param name="fitted">The car with its parts.</param>
    /// <param name="asked">What was asked: springs of a range are to be made.</param>
    public static string Condition(Fitted fitted, ChooseAsked asked)
    {
        var made = asked.Filters.Where(filter => filter.Range is not null).Select(filter => filter.Place).ToHashSet();
        string[] free = [.. fitted.Parts.Where(part => part.Place.Sort() == PartSort.Spring && made.Contains(part.Place)).Select(p => p.Option.Name)];
        return Bought([.. Unknown(fitted).Except(free)]) + (free.Length == 0 ? "" :
            $", only if {SpeedRanges.And(free)} {(free.Length == 1 ? "is a spring" : "are springs")} of a length with which the car stands as now, "
            + $"that {(free.Length == 1 ? "stays" : "stay")} seated at full droop and whose coils do not touch before the bump stop is solid");
    }

    private static string Bought(IReadOnlyList<string> names) => names.Count == 0 ? "" :
        $", only if {SpeedRanges.And([.. names])} {(names.Count == 1 ? "stays in its" : "stay in their")} seats at full droop and no coils touch "
        + "before the bump stop is solid, which the files do not tell: measure free-length, block length and droop first";

    private static bool IsUnknown(Car car, AxleEnd end)
    {
        var fit = new AxleFit(car, end);
        // Where the height is kept for want of a length the spring is taken to sit right, whatever it is.
        return fit.Origin is null or StanceOrigin.HeightKept || fit.CoilsTouch is null
            || !double.IsFinite(fit.LooseBelow) || car.Axles[(int)end].ReboundStop is null;
    }
}
