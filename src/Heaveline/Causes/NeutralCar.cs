using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tuning;

namespace Heaveline.Causes;

/// <summary>
/// A car with some of its causes of pitch set to neutral. Everything but the load is set on the car with its driver alone, and the load put in last:
/// what a load does to frequencies and damping is the load's doing.
/// </summary>
internal sealed class NeutralCar
{
    private readonly RideModel model;
    private readonly WhyOptions options;
    private readonly double speed;

    public NeutralCar(RideModel model, double speed, WhyOptions options)
    {
        this.model = model;
        this.options = options;
        this.speed = speed;
        Load = NeutralLoad.Of(model.Car, model.Load);
        Light = Load == model.Load ? model : RideModel.Of(model.Car, Load);
        Tuning = RideTuning.Of(Light);
        DynamicIndex = ModelChange.DynamicIndexOf(Light);
        var damped = Tuning.MeanFrequency * Math.Sqrt(Math.Max(0.0, 1.0 - (options.Damping * options.Damping)));
        InStep = RatioRule.InStep(model.Car.Wheelbase.Si, damped, speed, Coincidence.SuitedCycles);
        Ratio = options.Ratio ?? Math.Min(InStep, options.LargestRatio);
        Wheelbase = options.Wheelbase ?? (model.Rolls ? 2.7 : 1.4);
    }

    /// <summary>The neutral load.</summary>
    public LoadState Load { get; }

    /// <summary>The car under the neutral load.</summary>
    public RideModel Light { get; }

    /// <summary>Frequencies and damping ratios of the car under the neutral load.</summary>
    public RideTuning Tuning { get; }

    /// <summary>Dynamic index of the car under the neutral load.</summary>
    public double DynamicIndex { get; }

    /// <summary>
    /// The neutral frequency ratio (–): the stated one; otherwise the one that brings the ends into step at the speed, at most the largest that is
    /// allowed. It falls evenly with speed and never jumps.
    /// </summary>
    public double Ratio { get; }

    /// <summary>Ratio that brings the ends, both with the neutral damping ratio, into step at the speed (–).</summary>
    public double InStep { get; }

    /// <summary>
    /// The same with the ends damped as they are under the neutral load (–), as the rule of the ratio draws it; null where an end does not swing.
    /// </summary>
    public double? InStepAsDamped
    {
        get
        {
            try
            {
                return RatioForms.Of(Light).InStep(speed, Coincidence.SuitedCycles);
            }
            catch (RefusedValueException)
            {
                return null;
            }
        }
    }

    public double Wheelbase { get; }

    /// <summary>The causes that this car can have. Stops count when the pass touches them.</summary>
    public IReadOnlyList<PitchCauseKind> Causes(Pass pass)
    {
        var car = model.Car;
        return [.. Enum.GetValues<PitchCauseKind>().Where(kind => kind switch
        {
            PitchCauseKind.Load => Load != model.Load,
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
            var car = Light;
            var load = model.Load;
            for (var i = 0; i < causes.Count; i++)
            {
                if ((set & (1 << i)) == 0)
                {
                    continue;
                }

                if (causes[i] == PitchCauseKind.Load)
                {
                    load = Load;
                    continue;
                }

                if (causes[i] == PitchCauseKind.Wheelbase)
                {
                    load = ModelChange.Along(load, Wheelbase / model.Car.Wheelbase.Si);
                }

                car = Without(car, causes[i]);
            }

            return RideModel.Of(car.Car, load);
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    /// <summary>How far a cause that is one number is from neutral (–); NaN for the others.</summary>
    public double Beyond(PitchCauseKind cause) =>
        CauseValue.Kinds.Contains(cause) ? CauseValue.Of(Light, cause) - NeutralValue(cause) : double.NaN;

    private double NeutralValue(PitchCauseKind cause) => cause switch
    {
        PitchCauseKind.DynamicIndex => options.DynamicIndex,
        PitchCauseKind.FrequencyRatio => Ratio,
        PitchCauseKind.DampingLevel => options.Damping,
        _ => 1.0,
    };

    private RideModel Without(RideModel car, PitchCauseKind cause) => cause switch
    {
        PitchCauseKind.Interconnection => ModelChange.WithoutLink(car),
        PitchCauseKind.Wheelbase => ModelChange.Wheelbase(car, Wheelbase, inertiaGrows: true),
        PitchCauseKind.DynamicIndex or PitchCauseKind.FrequencyRatio or PitchCauseKind.DampingLevel or PitchCauseKind.DampingSplit =>
            CauseValue.Set(car, cause, NeutralValue(cause)),
        PitchCauseKind.Tyre => ModelChange.TyreRatio(car, options.TyreRatio),
        PitchCauseKind.Friction => ModelChange.WithoutFriction(car),
        _ => ModelChange.WithoutStops(car),
    };
}
