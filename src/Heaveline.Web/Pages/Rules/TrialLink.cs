using System.Globalization;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Rules;

/// <summary>A place of a map as a trial on the page of the pass: the settings of that page that make the car so.</summary>
internal static class TrialLink
{
    /// <summary>The address, from the page's base.</summary>
    /// <param name="asked">What was mapped.</param>
    /// <param name="car">The car's name in the garage.</param>
    /// <param name="road">The road's name there.</param>
    /// <param name="value">The value of what the rule turns.</param>
    /// <param name="speed">Speed, km/h.</param>
    /// <param name="pins">The trials that are pinned, in the words of an address; null for none.</param>
    public static string Of(RuleAsked asked, string car, string road, double value, double speed, string? pins = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return "pass" + PageAddress.Query(
        [
            ("car", car), ("load", asked.Car.Load.Name), ("road", road), ("speed", Text(speed, 1)), (CurrentCar.PinsKey, pins),
            .. Settings(asked, value),
        ]);
    }

    /// <summary>Whether the page of the pass can set what a rule turns.</summary>
    public static bool CanSet(RuleKind rule) =>
        rule is RuleKind.FrequencyRatio or RuleKind.Damping or RuleKind.Wheelbase or RuleKind.WheelbaseSameBody;

    private static IEnumerable<(string Key, string? Word)> Settings(RuleAsked asked, double value)
    {
        var rule = asked.Rule.Kind;
        if (!CanSet(rule))
        {
            return [];
        }

        if (rule is RuleKind.Wheelbase or RuleKind.WheelbaseSameBody)
        {
            (string, string?) length = ("wheelbase", Text(In.Millimetres.Of(value), 0));
            return rule == RuleKind.Wheelbase ? [length, ("inertia", "grows")] : [length];
        }

        var model = asked.Car.Model;
        RideModel changed;
        try
        {
            changed = asked.Rule.Axis(model, 2).Change(model, value);
        }
        catch (RefusedValueException)
        {
            // No car has this value: the place was left white on the map, and the car as it is is what can be driven.
            return [];
        }

        var dampers = Dampers(model.Car, changed.Car);
        return rule == RuleKind.FrequencyRatio ? [.. Springs(model.Car, changed.Car), .. dampers] : dampers;
    }

    private static IEnumerable<(string, string?)> Springs(Car was, Car now) =>
        [("front-spring", Spring(was.Front.Spring.Law, now.Front.Spring.Law)), ("rear-spring", Spring(was.Rear.Spring.Law, now.Rear.Spring.Law))];

    private static IEnumerable<(string, string?)> Dampers(Car was, Car now) =>
        [("front-damping", Damper(was.Front.Damper.Law, now.Front.Damper.Law)), ("rear-damping", Damper(was.Rear.Damper.Law, now.Rear.Damper.Law))];

    // A spring of constant rate by its rate, N/mm; another by how many times as stiff it is.
    private static string Spring(SpringLaw was, SpringLaw now) => (was, now) switch
    {
        (_, LinearSpring spring) => Rounded.Text(Rounded.Significant(spring.Rate.Si / 1000.0, 5)),
        (GasSpring first, GasSpring gas) => Text(first.Volume.Si / gas.Volume.Si, 4),
        (TableSpring first, TableSpring table) => Text((first.Table.At[^1] - first.Table.At[0]) / (table.Table.At[^1] - table.Table.At[0]), 4),
        _ => throw new NotSupportedException($"No way is known to set a {now.GetType().Name}."),
    };

    // By how many times as strong it is.
    private static string Damper(DamperLaw was, DamperLaw now) => (was, now) switch
    {
        (RatioDamper first, RatioDamper ratio) => Text(first.Ratio.Si > 0.0 ? ratio.Ratio.Si / first.Ratio.Si : 1.0, 4),
        (TableDamper first, TableDamper table) => Text(Strength(first) > 0.0 ? Strength(table) / Strength(first) : 1.0, 4),
        _ => throw new NotSupportedException($"No way is known to set a {now.GetType().Name}."),
    };

    private static double Strength(TableDamper damper) => damper.Bump.Force.Sum(Math.Abs) + damper.Rebound.Force.Sum(Math.Abs);

    private static string Text(double value, int decimals) => Math.Round(value, decimals).ToString("0.######", CultureInfo.InvariantCulture);
}
