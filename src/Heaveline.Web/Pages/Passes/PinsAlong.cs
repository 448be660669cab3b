using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tuning;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// Pins that go along from a car to a variant that is kept of it: what they set is of the former car, and is said anew of the variant so that the
/// same cars stand there. A pin goes along only where its car comes out the same.
/// </summary>
internal static class PinsAlong
{
    // Dampers are set to a newton, springs to five digits: what differs by less is the same car, a tenth of what anybody would feel.
    private const double Same = 3e-3;

    /// <summary>The pins as the variant has them, each at its place; and the places of those that cannot be said of it.</summary>
    /// <param name="view">The former car, with what is kept set on it.</param>
    /// <param name="variant">The variant as described.</param>
    public static (IReadOnlyList<PassPin> Pins, IReadOnlyList<int> Left) Of(PassView view, Car variant)
    {
        var pins = new List<PassPin>();
        var left = new List<int>();
        foreach (var pin in view.State.Pins)
        {
            if (Along(view, variant, pin) is { } along && pins.All(one => one.Word != along.Word))
            {
                pins.Add(along);
            }
            else
            {
                left.Add(pin.Place);
            }
        }

        return (pins, left);
    }

    private static PassPin? Along(PassView view, Car variant, PassPin pin)
    {
        var kept = PassPin.Of(view.State);
        double Boot(PassPin of) => of.Values.GetValueOrDefault(Luggage.Key);
        if (Boot(kept) > 0.0 && Boot(pin) != Boot(kept))
        {
            // What is in the boot is a load of the variant, and no setting takes it out.
            return null;
        }

        var values = ImmutableSortedDictionary.CreateBuilder<string, double>(StringComparer.Ordinal);
        foreach (var setting in Settings.All(pin.InertiaGrows))
        {
            if (setting.ScaleOf(view.Described) is not { } former || setting.ScaleOf(variant) is not { } now)
            {
                continue;
            }

            double In(PassPin of) => of.Values.GetValueOrDefault(setting.Key, former.Described);
            var (was, wanted) = (In(kept), In(pin));
            if (Math.Abs(was - wanted) <= 1e-9 * Math.Abs(was))
            {
                continue;
            }

            // A part of what is described is another part of what is kept.
            values[setting.Key] = former.Unit.StartsWith('×') ? Rounded.Significant(wanted / was, 12) : wanted;
        }

        if (Boot(kept) == 0.0 && Boot(pin) > 0.0)
        {
            values[Luggage.Key] = Boot(pin);
        }

        var along = new PassPin(values.ToImmutable(), pin.InertiaGrows && values.ContainsKey("wheelbase")) { Place = pin.Place };
        return IsSame(view, variant, pin, along) ? along : null;
    }

    private static bool IsSame(PassView view, Car variant, PassPin pin, PassPin along)
    {
        try
        {
            var load = LoadedCar.LoadNamed(variant, view.Now.Model.Load.Name) ?? view.Load;
            var former = Numbers(PassTrial.SetCar(pin.On(view.State), view.Described, view.Load).Model);
            var now = Numbers(PassTrial.SetCar(along.On(new PassState { Car = view.State.Car }), variant, load).Model);
            return former.Zip(now).All(pair => Math.Abs(pair.First - pair.Second) <= Same * Math.Max(Math.Abs(pair.First), 0.01)
                || pair.First.Equals(pair.Second));
        }
        catch (RefusedValueException)
        {
            // A setting that the variant cannot have: the pin stays behind, and the page says so.
            return false;
        }
    }

    // What a crossing feels of the settings: springs with tyres and link, dampers, stops, wheelbase and the loaded body.
    private static double[] Numbers(RideModel model) =>
    [
        .. AxleRide.Of(model).SelectMany(axle => new[]
        {
            axle.Rates.WheelRate, axle.Rates.Frequency, axle.Damping.BumpRatio, axle.Damping.ReboundRatio, model.Trim.BumpLeft[2 * (int)axle.End],
        }),
        model.Car.Wheelbase.Si,
        model.Body.PitchInertia,
        (model.Car.Interconnection as ElasticLink)?.Rate.Si ?? 0.0,
        (model.Car.Interconnection as ElasticLink)?.Damping.Si ?? 0.0,
    ];
}
