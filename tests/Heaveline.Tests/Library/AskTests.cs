using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Tests.Library;

public class AskTests
{
    private static readonly Amount<Velocity> Speed = Velocity.FromKilometresPerHour(40);

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = Length.FromMillimetres(60), Length = Length.FromMetres(3.7) });

    private static readonly Car Other = PlainCar.Saloon with { Name = "other", Wheelbase = Length.FromMetres(2.9) };

    private static readonly LoadState Behind = PlainCar.With(150.0, 2.4);

    [Fact]
    public void A_pass_has_every_number_of_the_catalogue_in_its_unit_and_with_its_digits()
    {
        var pass = Pass.Of(RideModel(PlainCar.Saloon), Hump, Speed.Si);
        var told = Ask.Pass(PlainCar.Saloon, Hump, Speed, Behind);
        foreach (var measure in SettlingCatalogue.All)
        {
            var number = told[measure.Key];
            Assert.Equal(measure.ShownOf(pass), number.Value);
            Assert.Equal((measure.Label, measure.Unit.Symbol, measure.Format), (number.Label, number.Unit, number.Format));
            Assert.Equal(measure.Print(number.Value) + measure.Unit.Suffix, number.ToString());
        }
    }

    [Fact]
    public void A_pass_tells_its_motion_in_si_units()
    {
        var pass = Pass.Of(RideModel(PlainCar.Saloon), Hump, Speed.Si);
        var told = Ask.Pass(PlainCar.Saloon, Hump, Speed, Behind);
        Assert.True(told.IsWhole);
        Assert.Equal(pass.RearLeaves, told.RearLeaves);
        Assert.Equal(pass.Time, told.Time);
        Assert.Equal(pass.Heave, told.Heave);
        Assert.Equal(pass.Pitch, told.Pitch);
        Assert.Equal(pass.Roll, told.Roll);
        Assert.Equal(pass.HeaveAcceleration, told.HeaveAcceleration);
        Assert.Equal(pass.PitchAcceleration, told.PitchAcceleration);
        Assert.Equal(pass.Travel(2), told.Travel(2));
        Assert.Equal(pass.TyreLoad(3), told.TyreLoad(3));
        Assert.Throws<ArgumentOutOfRangeException>(() => told.Travel(4));
    }

    [Fact]
    public void A_reply_is_what_the_study_answers()
    {
        var answer = WhyStudy.Run(new WhyAsked { Car = LoadedCar.Of(PlainCar.Saloon, Behind), Road = Hump, Speed = Speed.Si });
        var told = Ask.Why(PlainCar.Saloon, Hump, Speed, Behind);
        Assert.Equal(answer.Lines, told.Lines);
        Assert.Equal(answer.Sentences.Select(s => (s.Id, s.Text)), told.Sentences);
        Assert.Equal([.. answer.Cautions, .. answer.Closing], told.Cautions);
        Assert.Equal(answer.Sources.Count, told.Sources.Count);
        Assert.Null(told.Failure);
        Assert.Equal(answer.Json("0.1.0", "why"), told.Json());
        Assert.Equal(answer.WholeTables.Sum(t => t.Rows.Sum(r => r.Values.Count(v => v is not null))), told.Numbers.Count);
    }

    [Fact]
    public void Each_question_is_answered_by_its_own_study()
    {
        (string Word, Reply Told)[] all =
        [
            ("describe", Ask.Describe(PlainCar.Saloon)),
            ("pass", Ask.Pass(PlainCar.Saloon, Hump, Speed)),
            ("compare", Ask.Compare([PlainCar.Saloon, Other], Hump, Speed)),
            ("ride", Ask.Ride(PlainCar.Saloon, RoadClass.C, [Speed])),
            ("cost", Ask.Cost(PlainCar.Saloon, Other)),
        ];
        Assert.All(all, asked =>
        {
            Assert.Contains($"\"command\": \"{asked.Word}\"", asked.Told.Json(), StringComparison.Ordinal);
            Assert.NotEmpty(asked.Told.Numbers);
        });
    }

    [Fact]
    public void A_number_is_found_by_its_column()
    {
        var told = Ask.Compare([PlainCar.Saloon, Other], Hump, Speed, Behind);
        Assert.Equal(Ask.Pass(Other, Hump, Speed, Behind)["settling-rms-pitch"].Value, told["settling-rms-pitch", "other"].Value, 1e-9);
        Assert.NotEqual(told["settling-rms-pitch", "other"].Value, told["settling-rms-pitch"].Value);
    }

    // As at the command line: a car's first load state, and empty where it has none.
    [Fact]
    public void Without_a_load_the_cars_first_one_is_meant()
    {
        var laden = PlainCar.Saloon with { LoadStates = [Behind] };
        Assert.Equal(
            Ask.Pass(laden, Hump, Speed, Behind)["settling-rms-pitch"].Value, Ask.Pass(laden, Hump, Speed)["settling-rms-pitch"].Value);
        Assert.Equal(
            Ask.Pass(PlainCar.Saloon, Hump, Speed)["settling-rms-pitch"].Value,
            Ask.Pass(laden, Hump, Speed, LoadState.Reference)["settling-rms-pitch"].Value);
    }

    [Fact]
    public void A_key_that_is_not_there_is_told_with_those_that_are()
    {
        var none = Assert.Throws<KeyNotFoundException>(() => Ask.Pass(PlainCar.Saloon, Hump, Speed)["rms-pitsch"]);
        Assert.StartsWith("There is no number 'rms-pitsch'. There are: ", none.Message, StringComparison.Ordinal);
        Assert.Contains("settling-rms-pitch", none.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_makes_no_sense_is_refused()
    {
        Assert.Contains("a name of its own", Assert.Throws<RefusedValueException>(
            () => Ask.Cost(PlainCar.Saloon, PlainCar.Saloon with { Wheelbase = Length.FromMetres(2.9) })).Message, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => Ask.Compare([PlainCar.Saloon], Hump, Speed));
        Assert.Throws<RefusedValueException>(() => Ask.Pass(PlainCar.Saloon, Hump, Velocity.FromMetresPerSecond(0.1)));
        Assert.Throws<RefusedValueException>(() => Ask.Rule(PlainCar.Saloon, Hump, "no-such-rule"));
        Assert.Throws<RefusedValueException>(() => Ask.Rule(PlainCar.Saloon, Road.Flat));
    }

    [Fact]
    public void A_question_that_is_stopped_is_not_answered()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Ask.Rule(PlainCar.Saloon, Hump, cancellation: stop.Token));
        Assert.ThrowsAny<OperationCanceledException>(() => Ask.Doubt(PlainCar.Saloon, cancellation: stop.Token));
    }

    private static Heaveline.Models.RideModel RideModel(Car car) => Heaveline.Models.RideModel.Of(car, Behind);
}
