using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class PassOptionsTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    [Theory]
    [InlineData(0.9e-6)]
    [InlineData(2.1e-3)]
    [InlineData(double.NaN)]
    public void A_step_out_of_range_is_refused(double step) =>
        Assert.Throws<RefusedValueException>(() => FixedStep.Default with { LargestStep = step });

    [Fact]
    public void A_record_out_of_range_is_refused()
    {
        Refused(() => new() { SamplesPerSecond = 49.0 });
        Refused(() => new() { SamplesPerSecond = 4001.0 });
        Refused(() => new() { LeadTime = -0.1 });
        Refused(() => new() { LeadTime = 11.0 });
        Refused(() => new() { SettlingTime = 0.4 });
        Refused(() => new() { SettlingTime = 61.0 });
        Refused(() => new() { Duration = 0.0 });
        Refused(() => new() { Duration = 36001.0 });

        static void Refused(Func<PassRecord> record) => Assert.Throws<RefusedValueException>(record);
    }

    [Fact]
    public void What_is_recorded_does_not_depend_on_the_method()
    {
        var model = RideModel.Of(ExactCars.Saloon);
        var record = new PassRecord { SamplesPerSecond = 250.0, LeadTime = 0.3, Duration = 0.9 };
        var stepped = Pass.Of(model, Hump, 12.0, new() { Method = FixedStep.Once, Record = record });
        var exact = Pass.Of(model, Hump, 12.0, new() { Method = new ExactPieces(), Record = record });
        Assert.Equal(stepped.Time, exact.Time);
        Assert.Equal((0.004, -0.3, 0.9), (exact.SampleStep, exact.Time[0], Math.Round(exact.Time[^1], 9)));
        Assert.NotEqual(stepped.Statistics.Method, exact.Statistics.Method);
    }

    [Fact]
    public void Only_a_run_in_steps_that_is_asked_to_states_its_error()
    {
        var model = RideModel.Of(ExactCars.Saloon);
        double? ErrorOf(PassMethod method) => Pass.Of(model, Hump, 12.0, new() { Method = method }).Statistics.PitchError;
        Assert.NotNull(ErrorOf(FixedStep.Default));
        Assert.Null(ErrorOf(FixedStep.Once));
        Assert.Null(ErrorOf(new ExactPieces()));
    }
}
