using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Causes;

/// <summary>
/// A car with some of its causes of pitch set to neutral. Everything but the load is set on the unloaded car, and the load put in last: what a load
/// does to frequencies and damping is the load's doing.
/// </summary>
internal sealed class NeutralCar
{
    // Slower than this the ends never fall into step within a swing, and the rule says nothing: equal ends are neutral there.
    private const double LargestStep = 2.0;

    private readonly RideModel model;
    private readonly RideModel unloaded;
    private readonly WhyOptions options;

    public NeutralCar(RideModel model, double speed, WhyOptions options)
    {
        this.model = model;
        this.options = options;
        unloaded = model.Load.Loads.Count > 0 ? RideModel.Of(model.Car) : model;
        Tuning = RideTuning.Of(unloaded);
        DynamicIndex = ModelChange.DynamicIndexOf(unloaded);
        var damped = Tuning.MeanFrequency * Math.Sqrt(Math.Max(0.0, 1.0 - (options.Damping * options.Damping)));
        var inStep = RatioRule.InStep(model.Car.Wheelbase.Si, damped, speed, Coincidence.SuitedCycles);
        Ratio = options.Ratio ?? (inStep > LargestStep ? 1.0 : Math.Min(inStep, options.LargestRatio));
        Wheelbase = options.Wheelbase ?? (model.Rolls ? 2.7 : 1.4);
    }

    /// <summary>Frequencies and damping ratios of the unloaded car.</summary>
    public RideTuning Tuning { get; }

    /// <summary>Dynamic index of the unloaded car.</summary>
    public double DynamicIndex { get; }

    public double Ratio { get; }

    public double Wheelbase { get; }

    /// <summary>The causes that this car can have. Stops count when the pass touches them.</summary>
    public IReadOnlyList<PitchCauseKind> Causes(Pass pass)
    {
        var car = model.Car;
        return [.. Enum.GetValues<PitchCauseKind>().Where(kind => kind switch
        {
            PitchCauseKind.Load => model.Load.Loads.Count > 0,
            PitchCauseKind.Interconnection => car.Interconnection is not null,
            PitchCauseKind.DampingLevel or PitchCauseKind.DampingSplit => Tuning.FrontDamping > 0.0 && Tuning.RearDamping > 0.0,
            PitchCauseKind.Friction => car.Front.Friction.HalfWidth.Si > 0.0 || car.Rear.Friction.HalfWidth.Si > 0.0,
            PitchCauseKind.Stops =>
                Enumerable.Range(0, 4).Any(i => pass.Travel(i).Any(s => s > model.BumpTouch[i] || s < model.ReboundTouch[i])),
            _ => true,
        })];
    }

    /// <summary>The car with the causes of a set taken out; null when there is no such car.</summary>
    public RideModel? Without(IReadOnlyList<PitchCauseKind> causes, int set)
    {
        try
        {
            var car = unloaded;
            var load = model.Load;
            for (var i = 0; i < causes.Count; i++)
            {
                if ((set & (1 << i)) == 0)
                {
                    continue;
                }

                if (causes[i] == PitchCauseKind.Load)
                {
                    load = LoadState.Reference;
                    continue;
                }

                if (causes[i] == PitchCauseKind.Wheelbase)
                {
                    load = ModelChange.Along(load, Wheelbase / model.Car.Wheelbase.Si);
                }

                car = Without(car, causes[i]);
            }

            return load.Loads.Count > 0 ? RideModel.Of(car.Car, load) : car;
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    private RideModel Without(RideModel car, PitchCauseKind cause) => cause switch
    {
        PitchCauseKind.Interconnection => ModelChange.WithoutLink(car),
        PitchCauseKind.Wheelbase => ModelChange.Wheelbase(car, Wheelbase, inertiaGrows: true),
        PitchCauseKind.DynamicIndex => ModelChange.DynamicIndex(car, options.DynamicIndex),
        PitchCauseKind.FrequencyRatio => RideTuning.Of(car).WithRatio(Ratio).ApplyTo(car),
        PitchCauseKind.DampingLevel => RideTuning.Of(car).WithDamping(options.Damping).ApplyTo(car),
        PitchCauseKind.DampingSplit => RideTuning.Of(car).WithDampingSplit(1.0).ApplyTo(car),
        PitchCauseKind.Tyre => ModelChange.TyreRatio(car, options.TyreRatio),
        PitchCauseKind.Friction => ModelChange.WithoutFriction(car),
        _ => ModelChange.WithoutStops(car),
    };
}
