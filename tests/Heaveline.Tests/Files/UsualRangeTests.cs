using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

/// <summary>What is possible but not usual is told in its place, and what nothing on wheels has is refused.</summary>
public class UsualRangeTests
{
    private const string Body = "body: {centre-of-gravity-height: 0.55 m}";
    private const string Tyre = "tyre: {rate: 190 N/mm}";
    private const string Stop = "bump-stop: {clearance: 60 mm, rate: 50 N/mm, solid-after: 40 mm}";

    [Theory]
    [InlineData(
        Body,
        "body: {centre-of-gravity-height: 0.55 m, roll-inertia: 4 kg m2}",
        "body roll inertia is 4 kg m2; 20 kg m2 to 5000 kg m2 is usual.",
        "a digit too few")]
    [InlineData(
        Body, "body: {centre-of-gravity-height: 0.55 m, pitch-axis-height: 110 in}", "is 110 in; -0.5 m to 1.2 m is usual.", "in written for cm")]
    [InlineData("track: 1.45 m", "track: 0.45 m", "front track is 0.45 m; 0.8 m to 2.3 m is usual.", "Check")]
    [InlineData(
        "track: 1.44 m",
        "track: 1.44 m\n  suspension: solid-axle\n  axle-inertia: 4000 kg m2",
        "rear axle inertia is 4000 kg m2",
        "a digit too many")]
    [InlineData(Tyre, "tyre: {rate: 190 N/mm ± 300 %}", "its doubt is 300 % of it", "digit")]
    [InlineData("front: 600 kg ± 2 kg", "front: 600 kg ± 500 kg", "its doubt is 83 % of it", "digit")]
    [InlineData(
        Stop,
        "bump-stop: {clearance: 60 mm, rate: 60000 N/mm, solid-after: 40 mm}",
        "is 60000 N/mm; 1 N/mm to 3000 N/mm is usual.",
        "N/m written as N/mm")]
    [InlineData(Stop, "bump-stop: {clearance: 620 mm, rate: 50 N/mm, solid-after: 40 mm}", "is 620 mm; up to 250 mm is usual.", "digit")]
    [InlineData(Tyre, "tyre: {rate: 190 N/mm, damping: 8000 N s/m}", "a tyre has 50 to 200 N s/m", "damper")]
    [InlineData(Tyre, "tyre: {rate: 190 N/mm}\n  anti-roll-bar: {wheel-rate: 320 N/mm}", "as stiff as the wheel rate", "digit")]
    [InlineData(Tyre, "tyre: {rate: 190 N/mm}\n  friction: {half-width: 6000 N}", "up to 25 % is usual", "digit")]
    [InlineData("mass: 75 kg", "mass: 780 kg", "is 780 kg in one seat", "newtons")]
    [InlineData("seats:", "brakes: {front-share: 68 %, wheel-radius: 30 in}\nseats:", "brakes wheel radius is 30 in", "in written for cm")]
    [InlineData(
        "{front: 600 kg ± 2 kg, rear: 500 kg ± 2 kg}",
        "{front-left: 80 kg, front-right: 392 kg, rear: 500 kg}",
        "carries 4.9 times as much",
        "digit")]
    public void What_was_seen_to_pass_as_in_order_is_told(string sound, string odd, string message, string advice)
    {
        var reading = TextCar.Read(TextCar.With(sound, odd));
        Assert.Equal("", string.Join('\n', reading.Refusals.Select(r => r.Message)));
        var told = Assert.Single(reading.Warnings, w => w.Message.Contains(message, StringComparison.Ordinal));
        Assert.Contains(advice, told.Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Body, "body: {centre-of-gravity-height: 0.55 m, roll-inertia: 1e308 kg m2}", "roll inertia is 1e308 kg m2")]
    [InlineData("unsprung-mass: 70 kg", "unsprung-mass: 0.000001 kg", "unsprung mass is 0.000001 kg; 5 kg to 500 kg is usual.")]
    [InlineData(Stop, "bump-stop: {clearance: 1e22 mm, rate: 50 N/mm, solid-after: 40 mm}", "clearance is 1e22 mm")]
    [InlineData(Body, "body: {centre-of-gravity-height: 0.55 m ± 1e9 m}", "is 0.55 m ± 1e9 m: its doubt is far beyond any value")]
    [InlineData(Stop, "bump-stop: {clearance: 0 mm ± 1e9 m, rate: 50 N/mm, solid-after: 40 mm}", "its doubt is far beyond any value")]
    [InlineData(Body, "body: {centre-of-gravity-height: 0.55 m ± 1e308 m}", "the doubt 1e308 m is beyond what a number can hold here.")]
    [InlineData(Body, "body: {centre-of-gravity-height: 0.55 m ± 1e308 %}", "the doubt 1e308 % is beyond what a number can hold here.")]
    [InlineData(Body, "body: {centre-of-gravity-height: 0.55 ± 1e305 km}", "the doubt 1e305 km is beyond what a number can hold here.")]
    [InlineData(Stop, "bump-stop: {clearance: 60 mm, table: [[10 mm, 1e12 N], [20 mm, 2e12 N]]}", "is 1e12 N; 0 N to 100000 N is usual.", 2)]
    public void What_nothing_on_wheels_has_is_refused(string sound, string impossible, string message, int refusals = 1)
    {
        var reading = TextCar.Read(TextCar.With(sound, impossible));
        Assert.Equal(refusals, reading.Refusals.Count);
        Assert.Contains(message, reading.Refusals[0].Message, StringComparison.Ordinal);
        Assert.True(reading.Refusals[0] is { Line: > 1, Column: > 5 });
        Assert.DoesNotContain(reading.Warnings, w => w.Message.Contains(message, StringComparison.Ordinal));
    }

    // A spring table, a stop, a damper and a sweep: every cell by itself, where it stands.
    [Theory]
    [InlineData(
        "rate: 22 N/mm",
        "table: [[0 mm, 0 N], [60 m, 1500 N], [100 m, 3100 N]]",
        "front spring table item 2 item 1 is 60 m; -500 mm to 1000 mm is usual.|front spring table item 3 item 1 is 100 m",
        "m written for mm")]
    [InlineData(
        "rate: 22 N/mm", "table: [[0 mm, 0 N], [60 mm, 1500 N], [100 mm, 310000 N]]", "table item 3 item 2 is 310000 N; 0 N to 60000 N is usual.",
        "a digit too many")]
    [InlineData(
        Stop,
        "bump-stop: {clearance: 60 mm, table: [[10 mm, 300 N], [25 cm, 1500 N], [35 cm, 1600 N]]}",
        "item 3 item 1 is 35 cm; 0 mm to 250 mm is usual.",
        "digit")]
    [InlineData("[0.3 m/s, 300 N]]", "[0.3 m/s, 30000 N]]", "rear damper bump item 2 item 2 is 30000 N; 0 N to 20000 N is usual.", "digit")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "sweep: [[-40 m, -24 m], [20 mm, 12.6 mm], [40 mm, 25.6 mm]]",
        "front spring sweep item 1 item 1 is -40 m; -400 mm to 400 mm is usual.|sweep item 1 item 2 is -24 m",
        "m written for mm")]
    [InlineData(
        "spring-per-wheel: 0.90",
        "moves: 5 mm for 50 mm at the wheel",
        "front spring moves is 5 mm for 50 mm at the wheel; a ratio of 0.2 to 1.3 is usual.",
        "digit")]
    public void Every_cell_of_a_table_that_is_not_usual_is_told_in_its_place(string sound, string odd, string messages, string advice)
    {
        var text = TextCar.With(sound, odd);
        var reading = TextCar.Read(text);
        Assert.Equal("", string.Join('\n', reading.Refusals.Select(r => r.Message)));
        foreach (var message in messages.Split('|'))
        {
            var told = Assert.Single(reading.Warnings, w => w.Message.Contains(message, StringComparison.Ordinal));
            var cell = message[(message.IndexOf(" is ", StringComparison.Ordinal) + 4)..].Split(';')[0];
            Assert.Equal(cell, text.Split('\n')[told.Line - 1].Substring(told.Column - 1, told.Length));
            Assert.Contains(advice, told.Advice, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_rider_beside_a_two_wheeler_is_told()
    {
        var text = File.ReadAllText(Path.Combine(House.Checkout.Root, "examples", "garage", "plover-motorcycle.yaml"));
        var seats = text.IndexOf("behind-front-axle:", StringComparison.Ordinal);
        var reading = TextCar.Read($"{text[..seats]}left: 0.3 m, {text[seats..]}");
        Assert.Contains(reading.Warnings, w => w.Message.Contains("is 0.3 m; a rider sits in the middle", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_quantity_of_a_car_file_says_what_is_usual_and_its_own_example_is()
    {
        var seen = new HashSet<Shape>();
        var silent = new List<string>();
        var tables = new List<string>();
        Walk(CarWords.Shape.Layout);
        Assert.Empty(silent);
        Assert.Equal(["bump", "rebound", "sweep", "table"], tables.Order(StringComparer.Ordinal).Distinct());
        Assert.True(seen.Count > 15, $"{seen.Count} groups were looked at");

        void Walk(Shape shape)
        {
            if (!seen.Add(shape))
            {
                return;
            }

            foreach (var key in shape.Keys)
            {
                if (key.Kind.Group is { } group)
                {
                    Walk(group);
                }
                else if (key.Usual is not null)
                {
                    var reader = new Reader(new SourceText("", key.Example));
                    key.TellsUnusual!(new Node(NodeKind.Scalar, key.Name, new Place(1, 1, 1)) { Text = key.Example }, key.Sample()!, reader);
                    Assert.Empty(reader.Warnings);
                }
                else if (key.UsualWords is not null)
                {
                    var reader = new Reader(new SourceText("", key.Example));
                    Assert.True(key.Kind.TryReadAny(YamlTree.Of(reader)!, reader, out _));
                    Assert.Empty(reader.Warnings);
                    tables.Add(key.Name);
                }
                else if (key.Example.StartsWith("[[", StringComparison.Ordinal)
                    || key.Kind.GetType().Name.StartsWith("AmountKind", StringComparison.Ordinal))
                {
                    silent.Add($"{shape.Name} {key.Name}");
                }
            }
        }
    }

    [Theory]
    [InlineData("spring-per-wheel: 0.90", "moves: 45 mm ± 0.5 m for 50 mm at the wheel", "its doubt is 1111 % of it.")]
    [InlineData(
        Stop, "bump-stop: {clearance: 60 mm ± 1 m, rate: 50 N/mm, solid-after: 40 mm}", "its doubt is wider than all that is usual, 0 mm to 250 mm.")]
    [InlineData(Body, "body: {centre-of-gravity-height: 0.55 m, pitch-axis-height: 0 m ± 5 m}", "its doubt is wider than all that is usual")]
    public void A_doubt_wider_than_what_it_is_of_is_told_of_every_key(string sound, string odd, string message)
    {
        var reading = TextCar.Read(TextCar.With(sound, odd));
        Assert.Empty(reading.Refusals);
        Assert.Single(reading.Warnings, w => w.Message.Contains(message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("moves: 47.5 mm for 1e-320 mm at the wheel", "is 47.5 mm for 1e-320 mm at the wheel, no ratio;")]
    [InlineData("moves: 47.5 mm for 0 mm at the wheel", "is 47.5 mm for 0 mm at the wheel, no ratio;")]
    [InlineData("moves: -45 mm for 50 mm at the wheel", "a ratio of -0.9;")]
    public void A_ratio_that_no_number_holds_is_refused_as_it_was_typed(string odd, string message)
    {
        var refused = Assert.Single(TextCar.Read(TextCar.With("spring-per-wheel: 0.90", odd)).Refusals).Message;
        Assert.Contains(message, refused, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", refused, StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_wholly_in_a_wrong_unit_is_told_once()
    {
        var reading = TextCar.Read(TextCar.With("rate: 22 N/mm", "table: [[0 m, 0 N], [60 m, 1500 N], [100 m, 3100 N], [140 m, 4700 N]]"));
        var told = Assert.Single(reading.Warnings, w => w.Message.Contains("-500 mm to 1000 mm is usual", StringComparison.Ordinal));
        Assert.Contains("table item 2 item 1 is 60 m", told.Message, StringComparison.Ordinal);
        Assert.EndsWith("So are 2 more of its column.", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_load_states_than_anyone_drives_are_refused()
    {
        string With(int count) => TextCar.With(
            "loads:\n",
            "loads:\n" + string.Concat(Enumerable.Range(0, count).Select(i => $"  state {i}:\n    - {{what: driver, mass: 75 kg, in: driver}}\n")));
        Assert.Contains(
            "has 61 load states; it must have at most 60.", Assert.Single(TextCar.Read(With(60)).Refusals).Message, StringComparison.Ordinal);
        Assert.Empty(TextCar.Read(With(59)).Refusals);
    }
}
