using Heaveline.Answers;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Files.Cars;
using Heaveline.Studies;
using Heaveline.Tests.Drives;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>What drive says of the car, of a planted log of twelve passes over one hump.</summary>
public class DriveCarStudyTests
{
    private static readonly Lazy<DriveAnswer> Known = new(() => Answer(2.7, null));

    private static PlantedRoad Road { get; } = new()
    {
        Bumps = [.. Enumerable.Range(0, 12).Select(i => (PlantedBump.Round, 4.2 + (0.45 * i)))], Seed = 3,
    };

    private static DriveAnswer Answer(double? wheelbase, LoadedCar? car) => DriveStudy.Run(new DriveAsked
    {
        Log = Road.Driven().Motion.Log,
        Car = car,
        Settings = new EventSettings
        {
            Wheelbase = wheelbase,
            Phone = new PhonePlace { BehindFrontAxle = 1.45 },
            Sites = [.. Enumerable.Range(0, 12).Select(i => ("hump", 45.0 + (12.0 * i)))],
        },
    });

    private static string Said(Answer answer) => string.Join("\n", [.. answer.Head.Select(s => s.Text), .. answer.Sentences.Select(s => s.Text)]);

    [Fact]
    public void The_car_is_said_with_its_intervals_and_the_motion_it_holds_for()
    {
        var answer = Known.Value;
        Assert.True(answer.Identified!.IsBelieved, string.Join("\n", answer.Identified.Refusals));
        var said = Said(answer);
        Assert.Contains("bumps at 15 to ", said, StringComparison.Ordinal);
        Assert.Contains("of the motion: damper speeds about ", said, StringComparison.Ordinal);
        Assert.Contains("not intervals of springs and dampers", said, StringComparison.Ordinal);
        Assert.Contains("no real drive whose car is known", said, StringComparison.Ordinal);
        var table = Assert.Single(answer.Tables, t => t.Title == "The car, of this motion (90 %)");
        Assert.Equal(["found", "from", "to", "thought from", "to"], table.Columns);
        var ratio = Assert.Single(table.Rows, r => r.Key == "driven-ratio").Values;
        Assert.InRange(Road.Rear / Road.Front, ratio[1]!.Value, ratio[2]!.Value);
        var facts = answer.Facts["car"]!;
        Assert.True((bool)facts["believed"]!);
        Assert.Equal(ratio[0]!.Value, (double)facts["numbers"]!["frequencyRatio"]!["value"]!, 1e-9);
    }

    // Planted passes over one bump: dampings are off by what the line itself does.
    [Fact]
    public void Passes_over_one_line_are_said_to_share_its_roughness()
    {
        Assert.Single(Known.Value.Identified!.Windows.Select(w => w.Site).Distinct());
        Assert.Contains(DriveCarWords.Short(Known.Value), s => s.Id == "car-one-line");
    }

    [Fact]
    public void A_file_that_states_wide_doubts_is_not_held_against_a_drive_as_if_it_were_exact()
    {
        var van = Heaveline.Files.Cars.CarFile.Load(
            Path.Combine(Heaveline.Tests.House.Checkout.Root, "examples", "garage", "drover-van.yaml")).Value!;
        var beside = CarBeside.Of(LoadedCar.Of(van, LoadedCar.UsualLoad(van)));
        var doubt = beside.DoubtOf(CarNumber.RearDamping);
        Assert.InRange(doubt.HalfWidth, 0.3, 0.5);
        var (file, known) = (beside.Of(CarNumber.RearDamping)!.Value, Known.Value.Identified!);
        string Said(double value) => DriveCarWords.Of(Known.Value with
        {
            Beside = beside,
            Identified = known with
            {
                Estimates = [.. known.Estimates.Select(e => e.Number != CarNumber.RearDamping ? e
                    : e with { Value = value, Low = 0.95 * value, High = 1.05 * value, IsSaid = true })],
            },
        }).Single(s => s.Id == "car-beside-driven-rear-damping").Text;
        Assert.EndsWith("no more than both doubts together leave open.", Said(1.3 * file), StringComparison.Ordinal);
        Assert.Contains("of which the file does not state all", Said(1.3 * file), StringComparison.Ordinal);
        Assert.EndsWith("friction, or stronger dampers.", Said(1.8 * file), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_refusal_and_that_of_a_comparison_name_the_drive_that_would_tell_too()
    {
        const string tells = "Four more passes over hump at 20 km/h would bring it from ± 5.0 % to ± 2.0 %.";
        var refused = Known.Value.Identified! with
        {
            IsBelieved = false,
            Refusals = [RefusalWords.SoftMount("it swings"), RefusalWords.Halves(CarNumber.RearDamping, 4.0, tells)],
        };
        var halves = Assert.Single(DriveCarWords.Short(Known.Value with { Identified = refused }), s => s.Id == "car-halves");
        Assert.EndsWith($"Did load, pressure or line change? {tells}", halves.Text, StringComparison.Ordinal);
        var alone = refused with { Refusals = [refused.Refusals[1]] };
        Assert.Contains(tells, ChangeWords.Of(alone, null, null, 0.9)[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Card_and_fit_are_drawn()
    {
        var card = Known.Value.Figure(DriveAnswer.CarCard);
        Assert.Equal(3, card.Panels.Length);
        Assert.Contains("of the motion", card.Caption, StringComparison.Ordinal);
        Assert.Equal(3, Known.Value.Figure(DriveAnswer.Fit).Panels.Length);
        Assert.Contains(DriveAnswer.CarCard, Known.Value.FigureIds);
    }

    [Fact]
    public void Beside_a_car_file_each_difference_is_named()
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var answer = Answer(2.7, LoadedCar.Of(car, LoadedCar.UsualLoad(car)));
        Assert.Contains(
            "car file", Assert.Single(answer.Tables, t => t.Title.StartsWith("The car", StringComparison.Ordinal)).Columns);
        var beside = answer.Sentences.Where(s => s.Id.StartsWith("car-beside-", StringComparison.Ordinal)).ToArray();
        Assert.Equal(6, beside.Length);

        // Under which load stands first, in short too: whoever drove another load is told so before any spring is blamed.
        var said = DriveCarWords.Short(answer).Select(s => s.Text).ToArray();
        var under = $"The car file beside it is Fern saloon under the load '{LoadedCar.UsualLoad(car).Name}'.";
        Assert.Contains(said, s => s.StartsWith(under, StringComparison.Ordinal));
        Assert.All(beside, s => Assert.Contains("the car file's", s.Text, StringComparison.Ordinal));
        // The file gives share and wheelbase and no start: the planted car comes out and not the file's.
        Assert.Equal(1.0, answer.Identified!.Of(Heaveline.Drives.Identification.CarNumber.FrequencyRatio)!.Value / (Road.Rear / Road.Front), 0.03);
    }

    [Fact]
    public void Without_a_wheelbase_it_is_asked_for()
    {
        var answer = Answer(null, null);
        Assert.Contains("Give the wheelbase (tape, ± 1 cm)", Said(answer), StringComparison.Ordinal);
        Assert.DoesNotContain(DriveAnswer.CarCard, answer.FigureIds);
        Assert.Throws<Heaveline.Quantities.RefusedValueException>(() => answer.Figure(DriveAnswer.CarCard));
        Assert.False((bool)answer.Facts["car"]!["believed"]!);
    }

    [Fact]
    public void What_else_the_car_tells_stands_in_the_whole_answer_in_json_and_in_a_figure()
    {
        var answer = Known.Value;
        var whole = string.Join("\n", answer.WholeLinesIn(Heaveline.Quantities.ReaderUnits.Metric));
        Assert.Contains("gentler bumps (damper speeds about ", whole, StringComparison.Ordinal);
        Assert.Contains(
            "pitch in the first second after the rear wheels have left it (RMS, the linear car of this drive)", whole, StringComparison.Ordinal);
        Assert.Contains("fall into step at no speed up to 150 km/h", whole, StringComparison.Ordinal);
        Assert.Contains("Between bumps the road is of class A over ", whole, StringComparison.Ordinal);
        Assert.DoesNotContain("Between bumps", string.Join("\n", answer.LinesIn(Heaveline.Quantities.ReaderUnits.Metric)), StringComparison.Ordinal);
        var facts = answer.Facts;
        Assert.Equal("", (string?)facts["halves"]!["whyNot"]);
        Assert.Equal(6, facts["halves"]!["hardOverGentle"]!.AsObject().Count);
        Assert.Equal(answer.Events!.Sites[0].Name, (string?)facts["speeds"]!["sites"]![0]!["site"]);
        Assert.All(facts["roughness"]!["stretches"]!.AsArray(), s => Assert.Equal("A", (string?)s!["class"]));
        Assert.Equal("roughness", Assert.Single(answer.Figure(DriveAnswer.Rough).Panels).Id);
    }

    [Fact]
    public void What_else_a_car_tells_can_be_stopped_and_is_told_when_it_is_asked_for_again()
    {
        var answer = Known.Value;
        var detail = DriveDetail.Of(answer.Drive, answer.Trust, answer.Events, answer.Missed, answer.Identified)!;
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => detail.WorkOut(stop.Token));
        Assert.ThrowsAny<OperationCanceledException>(() => detail.RoughnessOf(stop.Token));
        detail.RoughnessOf(TestContext.Current.CancellationToken);
        Assert.Equal(answer.Detail!.Roughness.Stretches, detail.Roughness.Stretches);
        Assert.Same(detail.Roughness, detail.RoughnessOf(stop.Token));
    }

    [Theory]
    [InlineData(DriveDetailKind.Halves, "Gentler and harder half apart")]
    [InlineData(DriveDetailKind.Speeds, "Speeds over the sites")]
    [InlineData(DriveDetailKind.Roughness, "Roughness along the drive")]
    public void Each_thing_more_that_a_car_tells_is_worked_out_alone_can_be_stopped_and_is_what_all_lines_say(DriveDetailKind kind, string title)
    {
        var answer = Known.Value;
        var detail = DriveDetail.Of(answer.Drive, answer.Trust, answer.Events, answer.Missed, answer.Identified)!;
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => detail.Of(kind, stop.Token));
        var part = detail.Of(kind, TestContext.Current.CancellationToken);
        Assert.Equal(part.Sentences, detail.Of(kind, stop.Token).Sentences);
        Assert.All(
            Enum.GetValues<DriveDetailKind>().Where(other => other != kind),
            other => Assert.ThrowsAny<OperationCanceledException>(() => detail.Of(other, stop.Token)));
        Assert.StartsWith(title, part.Table.Title, StringComparison.Ordinal);
        Assert.Equal(kind == DriveDetailKind.Roughness, part.Figure is not null);
        var lines = string.Join("\n", answer.WholeLinesIn(Heaveline.Quantities.ReaderUnits.Imperial));
        Assert.Contains(
            FactText.Of(part.Table.In(Heaveline.Quantities.ReaderUnits.Imperial)).TrimEnd().ReplaceLineEndings("\n"),
            lines.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.All(
            part.Sentences, s => Assert.Contains(Heaveline.Quantities.ReaderUnits.Imperial.Text(s.Text), lines, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.62, 0.64, "0.62°", "0.64°")]
    [InlineData(0.62, 0.74, "0.6°", "0.7°")]
    public void The_pitch_of_both_halves_has_as_many_decimals_as_tell_them_apart(double gentle, double hard, string first, string second)
    {
        var halves = Known.Value.Detail!.Halves;
        const double degree = Math.PI / 180.0;
        halves = halves with
        {
            Gentle = halves.Gentle! with { PitchMotion = gentle * degree },
            Hard = halves.Hard! with { PitchMotion = hard * degree },
        };
        Assert.All(MotionHalvesWords.Of(halves, "bumps"), s =>
        {
            Assert.Contains($"pitch {first} RMS", s.Text, StringComparison.Ordinal);
            Assert.Contains($"pitch {second} RMS", s.Text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void The_roughness_is_told_where_it_is_asked_for_and_refused_without_a_car()
    {
        var asked = Known.Value with { Asked = Known.Value.Asked with { WantsRoughness = true } };
        Assert.Contains(
            "Between bumps the road is of class A over ", string.Join("\n", asked.LinesIn(Heaveline.Quantities.ReaderUnits.Metric)),
            StringComparison.Ordinal);
        var text = System.Text.Encoding.UTF8.GetString(Assert.Single(asked.Written("write-roughness", "along")).Bytes);
        Assert.StartsWith("from [m],to [m],at [s],read [m],", text, StringComparison.Ordinal);
        Assert.Equal(Known.Value.Detail!.Roughness.Stretches.Length + 2, text.Split('\n').Length);
        var without = Answer(null, null);
        without = without with { Asked = without.Asked with { WantsRoughness = true } };
        Assert.Null(without.Detail);
        Assert.Contains("The roughness along the road is not told", Said(without), StringComparison.Ordinal);
        Assert.Throws<Heaveline.Quantities.RefusedValueException>(() => without.Written("write-roughness", "along"));
        Assert.Throws<Heaveline.Quantities.RefusedValueException>(() => without.Figure(DriveAnswer.Rough));
    }
}
