using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The dipped beam against the one range that the car file chooses.</summary>
public static class LampWords
{
    /// <summary>Where the drop lies in its range, or how a range is chosen; nothing without a lamp.</summary>
    /// <param name="car">The car at rest.</param>
    public static IReadOnlyList<Sentence> Of(CarAtRest car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return car.SideEffects.Headlamp is { } aim && car.Model.Car is { Headlamp: { } lamp } described
            ? [new("headlamp", Standing(aim, lamp, described))]
            : [];
    }

    private static string Standing(HeadlampAim aim, Headlamp lamp, Car car)
    {
        var drop = $"The dipped beam's drop of {Numeral.Of(In.Percent.Of(aim.Drop), "F2")} %";
        if (HeadlampRange.Of(lamp) is { } range)
        {
            return $"{drop} lies {(range.Holds(aim.Drop) ? "inside" : "outside")} {PerCent(range.LeastDrop)} to {PerCent(range.GreatestDrop)} %: "
                + $"{range.Source} ({range.Known}). {HeadlampRange.Caution}";
        }

        if (lamp.Rule is not null)
        {
            return $"{drop} is held against nothing: the rule that the car file names has no range for a lamp at "
                + $"{Numeral.Of(lamp.Height.Si, "F2")} m.";
        }

        return car.Kind == VehicleKind.TwoWheeler
            ? $"{drop} is held against nothing: UN Regulation 53, 6.2.5, is the motorcycles' rule and its values are not built in; read them and "
                + "write least-drop and greatest-drop under headlamp."
            : $"{drop} is held against nothing: choose the rule that holds for this car with rule: under headlamp, or write "
                + "least-drop and greatest-drop.";
    }

    private static string PerCent(double drop) => Numeral.Of(In.Percent.Of(drop), "0.##");
}
