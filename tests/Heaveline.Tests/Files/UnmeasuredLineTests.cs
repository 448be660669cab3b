using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public class UnmeasuredLineTests
{
    public static TheoryData<string> Cars =>
        [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
        .Select(file => Path.GetFileName(file)!).Where(name => !name.StartsWith("fern-saloon-", StringComparison.Ordinal)).Order()];

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_value_of_a_car_is_marked_and_the_car_is_the_same(string file)
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", file));
        var marked = UnmeasuredLines.Mark(text, "Fern saloon");
        var (before, after) = (Root(text), Root(marked));
        Assert.True(after.IsSameAs(before, inOrder: true));
        var lines = UnmeasuredLines.In(marked);
        Assert.All(lines.Values, words => Assert.Equal("from Fern saloon, not measured", words));
        Assert.All(
            after.Entries.Where(entry => entry.Key is not ("car" or "note")),
            entry => Assert.All(UnmeasuredLines.Of(entry.Value), line => Assert.Contains(line, lines)));
        Assert.DoesNotContain(UnmeasuredLines.Of(after.At("car")!).Single(), lines);
        // A value stands alone on its line, but for those of one table and of one load.
        Assert.Equal(
            after.At("weighing")!.Entries.Count, UnmeasuredLines.Of(after.At("weighing")!).Count());
        Assert.Equal(Car(text).Name, Car(marked).Name);
        Assert.Equal(
            marked.Split('\n').Count(line => line.EndsWith(", not measured", StringComparison.Ordinal)
                || line.Contains(", not measured (", StringComparison.Ordinal)),
            lines.Count);
        Assert.Empty(UnmeasuredLines.In(UnmeasuredLines.Confirm(marked, lines.Keys)));
        Assert.True(Root(UnmeasuredLines.Confirm(marked, lines.Keys)).IsSameAs(before, inOrder: true));
    }

    [Fact]
    public void A_comment_that_stood_there_comes_back_when_the_line_is_confirmed()
    {
        const string text =
            "car: A\nwheelbase: 2.70 m # taped twice\nfront: {track: 1.5 m, unsprung-mass: 80 kg} # by eye\nnote: 'not # a comment'\n";
        var marked = UnmeasuredLines.Mark(text, "Fern saloon");
        Assert.Equal(
            "car: A\nwheelbase: 2.70 m # from Fern saloon, not measured (taped twice)\nfront: # by eye\n"
            + "  track: 1.5 m # from Fern saloon, not measured\n  unsprung-mass: 80 kg # from Fern saloon, not measured\nnote: 'not # a comment'\n",
            marked);
        Assert.StartsWith(
            "car: A\nwheelbase: 2.70 m # taped twice\nfront: # by eye\n  track: 1.5 m # from",
            UnmeasuredLines.Confirm(marked, [2]),
            StringComparison.Ordinal);
        var other = UnmeasuredLines.Mark(text.Replace("\n", "\r\n", StringComparison.Ordinal), "Fern saloon");
        Assert.Equal(marked.Replace("\n", "\r\n", StringComparison.Ordinal), other);
        Assert.Equal(UnmeasuredLines.In(marked), UnmeasuredLines.In(other));
        Assert.Equal(
            text.Replace(
                "front: {track: 1.5 m, unsprung-mass: 80 kg} # by eye",
                "front: # by eye\n  track: 1.5 m\n  unsprung-mass: 80 kg",
                StringComparison.Ordinal)
                .Replace("\n", "\r\n", StringComparison.Ordinal),
            UnmeasuredLines.Confirm(other, [2, 4, 5]));
    }

    [Fact]
    public void An_estimate_is_marked_with_its_rule_to_the_end_of_the_line()
    {
        var text = $"car: A\nwheelbase: 2.70 m{UnmeasuredLines.Estimated("usual (common practice, no source)")}\n";
        Assert.Equal("estimated: usual (common practice, no source)", UnmeasuredLines.In(text)[2]);
        Assert.Equal("car: A\nwheelbase: 2.70 m\n", UnmeasuredLines.Confirm(text, [2]));
    }

    [Fact]
    public void A_text_that_is_no_yaml_stays() => Assert.Equal("car: [", UnmeasuredLines.Mark("car: [", "Fern saloon"));

    private static Node Root(string text) => YamlReading.Value(new SourceText("car.yaml", text)).Value!;

    private static Heaveline.Cars.Car Car(string text) => CarFile.Read(new SourceText("car.yaml", text)).Value!;
}
