using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Roads;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Models;

/// <summary>What the kernel takes for granted of an element is compared with what the element says: nothing is dropped in silence.</summary>
public class KernelSlotsTests
{
    private static readonly Element Friction = new()
    {
        Name = "friction", Cause = StepCause.None, Corner = 0, Sight = Sight.Along(0), Felt = new double[4],
        Slider = new Slider(60.0, 0.001, 0.05),
    };

    [Fact]
    public void An_element_that_sees_what_its_slot_does_not_stand_for_is_refused_by_name()
    {
        Refused(ExactCars.Saloon, list => Changed(list, frictions: [Friction with { Sight = Sight.Along(0, 0.8) }, null, null, null]));
        Refused(ExactCars.Saloon, list => Changed(list, springs: [list.Springs[0] with { Sight = Sight.Along(2) }, .. list.Springs.Skip(1)]));
        Refused(ExactCars.Saloon, list => Changed(list, dampers: [list.Dampers[0] with { Sight = Sight.Across(0) }, .. list.Dampers.Skip(1)]));
        Refused(ExactCars.SolidAxles, list => Changed(list, rebounds: [
            list.ReboundStops[0]! with { Sight = Sight.Along(0, 0.7) }, .. list.ReboundStops.Skip(1)]));
        Refused(Barred, list => Changed(list, bars: [list.Bars[0]! with { Sight = Sight.Along(0, 0.5) }, list.Bars[1]]));
        Refused(ExactCars.DamperLinked, list => Changed(list, commonDampers: [
            list.CommonDampers[0] with { Sight = Sight.Side(0, 1.0, 0.5) }, list.CommonDampers[1]]));
        Refused(ExactCars.FluidLinked(LineState.Pipe), list => Changed(list, accumulators: [
            list.Accumulators[0] with { Sight = Sight.Volume(0, 0.002, false) }, .. list.Accumulators.Skip(1)]));
        Refused(ExactCars.FluidLinked(LineState.Pipe), list => Changed(list, resistances: [
            list.Resistances[0] with { Sight = Sight.Flow(1) }, list.Resistances[1]]));
    }

    [Fact]
    public void Sides_of_which_the_kernel_has_one_number_are_refused_by_name_where_they_differ()
    {
        var other = new StraightLaw { Slope = 12345.0 };
        Refused(ExactCars.ElasticLinked, list => Changed(list, commonSprings: [
            list.CommonSprings[0], list.CommonSprings[1] with { OnTravel = [other] }]));
        Refused(ExactCars.DamperLinked, list => Changed(list, commonDampers: [
            list.CommonDampers[0], list.CommonDampers[1] with { OnRate = [other] }]));
        Refused(ExactCars.Saloon, list => Changed(list, dampers: [list.Dampers[0] with { OnRate = [other] }, .. list.Dampers.Skip(1)]));
    }

    [Fact]
    public void What_has_no_room_in_a_slot_is_refused_by_name()
    {
        Refused(ExactCars.DamperLinked, list => Changed(list, commonDampers: [.. list.CommonDampers.Select(
            damper => damper with { OnRate = [new StraightLaw { Slope = 700.0, Constant = 5.0 }] })]));
        Refused(ExactCars.Saloon, list => Changed(list, bumps: [
            list.BumpStops[0]! with { Ratio = new RatioCurve(0.8) }, .. list.BumpStops.Skip(1)]));
    }

    [Fact]
    public void Common_dampers_work_without_common_springs()
    {
        var model = RideModel.Of(ExactCars.Saloon with
        {
            Interconnection = new ElasticLink { Rate = new(0.0), Damping = new(900.0), RearRatio = new(-0.8) },
        });
        var with = Run(model, model.Numbers);
        Assert.Equal(with, Run(model, About(model.Numbers, Changed(model.Numbers.Elements, commonSprings: []))));
        Assert.NotEqual(with, Run(model, About(model.Numbers, Changed(model.Numbers.Elements, commonSprings: [], commonDampers: []))));
    }

    [Fact]
    public void What_resists_the_flow_is_read_off_its_element()
    {
        var model = RideModel.Of(ExactCars.FluidLinked(LineState.Pipe));
        var n = model.Numbers;
        var stiff = n.Elements.Line! with { Resistance = 2.0 * n.Elements.Line!.Resistance };
        Element[] doubled = [.. n.Elements.Resistances.Select(e => e with { OnRate = [new StraightLaw { Slope = stiff.Resistance }] })];
        Assert.NotEqual(Run(model, n), Run(model, About(n, Changed(n.Elements, resistances: doubled))));
    }

    private static Car Barred => ExactCars.Saloon with { Front = ExactCars.Saloon.Front with { AntiRollBar = new(12000.0) } };

    private static void Refused(Car car, Func<ElementList, ElementList> change)
    {
        var n = RideModel.Of(car).Numbers;
        Assert.NotNull(n.Slots);
        var changed = About(n, change(n.Elements));
        var refusal = Assert.Throws<NotSupportedException>(() => changed.Slots);
        Assert.Contains(
            changed.Elements.All.Select(element => element.Name).Distinct(),
            name => refusal.Message.Contains(name, StringComparison.Ordinal));
    }

    private static double[] Run(RideModel model, RideNumbers numbers)
    {
        var road = Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) });
        var timing = PassTiming.Of(new(model, road, 12.0), new() { SettlingTime = 0.5 }, FixedStep.Once);
        using var stepper = Stepper.Of(numbers, timing.StepsPerSample, timing.Step);
        return PassRun.Of(stepper, RoadUnderWheels.Of(model, road), 12.0, timing, TestContext.Current.CancellationToken);
    }

    private static RideNumbers About(RideNumbers n, ElementList elements) => new()
    {
        Body = n.Body, Elements = elements, X = n.X, Y = n.Y, PerWheel = n.PerWheel, AcrossAxle = n.AcrossAxle, TyreRate = n.TyreRate,
        TyreDamping = n.TyreDamping, PitchGravity = n.PitchGravity, RollGravity = n.RollGravity, Rolls = n.Rolls, TrimTravel = n.TrimTravel,
        TrimForce = n.TrimForce, TrimLoad = n.TrimLoad, TrimFlow = n.TrimFlow,
    };

    private static ElementList Changed(
        ElementList list,
        IReadOnlyList<Element>? springs = null,
        IReadOnlyList<Element>? dampers = null,
        IReadOnlyList<Element?>? bumps = null,
        IReadOnlyList<Element?>? rebounds = null,
        IReadOnlyList<Element?>? frictions = null,
        IReadOnlyList<Element?>? bars = null,
        IReadOnlyList<Element>? commonSprings = null,
        IReadOnlyList<Element>? commonDampers = null,
        IReadOnlyList<Element>? accumulators = null,
        IReadOnlyList<Element>? resistances = null) => new()
        {
            Springs = springs ?? list.Springs, Dampers = dampers ?? list.Dampers, BumpStops = bumps ?? list.BumpStops,
            ReboundStops = rebounds ?? list.ReboundStops, Frictions = frictions ?? list.Frictions, Bars = bars ?? list.Bars,
            CommonSprings = commonSprings ?? list.CommonSprings, CommonDampers = commonDampers ?? list.CommonDampers,
            Accumulators = accumulators ?? list.Accumulators, Resistances = resistances ?? list.Resistances, Line = list.Line,
            HoldsFluid = list.HoldsFluid,
        };
}
