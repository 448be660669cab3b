using Heaveline.Files;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

public class YamlReadingTests
{
    private const string Whole = """
        title: Two springs   # a comment
        springs:
          - rate: 24.5 N/mm ± 5 %
            free-length: 310 mm
          - { rate: 140 lb/in, free-length: "12.5 in", at: wheel }
        spare:
          rate: 20 N/mm
          free-length: 300 mm
        warm: true
        turns: 12
        table:
          - [0.1 m/s, 250 N]
          - [0.3 m/s, 600 N]
        loads:
          driver: 80 kg
          luggage: 20 kg
        """;

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void A_whole_file_is_read(string lineEnd)
    {
        var reading = Sample.Read("\uFEFF" + Whole.ReplaceLineEndings(lineEnd));
        Assert.Empty(reading.Refusals);
        Assert.Empty(reading.Format());
        var bench = reading.Value!;
        Assert.Equal("Two springs", bench.Title);
        Assert.Equal(24500.0, bench.Springs[0].Rate.Si, 1e-9);
        Assert.Equal(1225.0, bench.Springs[0].Rate.Doubt.HalfWidth, 1e-9);
        Assert.Equal(Sample.Where.Spring, bench.Springs[0].At);
        Assert.Equal(24517.7569, bench.Springs[1].Rate.Si, 1e-4);
        Assert.Equal(0.3175, bench.Springs[1].FreeLength.Si, 1e-15);
        Assert.Equal(Sample.Where.Wheel, bench.Springs[1].At);
        Assert.Equal(0.3, bench.Spare!.FreeLength.Si);
        Assert.True(bench.Warm);
        Assert.Equal(12, bench.Turns);
        Assert.Equal([(0.1, 250.0), (0.3, 600.0)], bench.Table!.Select(row => (row.Speed.Si, row.Force.Si)));
        Assert.Equal(["driver", "luggage"], bench.Loads!.Select(load => load.Key));
    }

    [Fact]
    public void Keys_that_may_be_left_out_are_null()
    {
        var bench = Sample.Read("title: One\nsprings: [{rate: 20 N/mm, free-length: 3 in}]\n").Value!;
        Assert.Equal((null, null, null, null, null), (bench.Spare, bench.Warm, bench.Turns, bench.Table, bench.Loads));
    }

    [Fact]
    public void A_value_has_its_place_and_its_path_in_plain_words()
    {
        var root = Sample.Read(Whole).Root!;
        var rate = root.At("springs")!.Items[1].At("rate")!;
        Assert.Equal("springs item 2 rate", rate.Path);
        Assert.Equal(new Place(5, 13, 9), rate.Place);
        Assert.Equal(new Place(5, 17, 2), rate.PlaceOf(4, 2));
        var quoted = root.At("springs")!.Items[1].At("free-length")!;
        Assert.Equal("springs item 2 free length", quoted.Path);
        Assert.Equal(new Place(5, 37, 9), quoted.Place);
        Assert.Equal(new Place(5, 43, 2), quoted.PlaceOf(5, 2));
        Assert.Equal(new Place(6, 1, 5), root.At("spare")!.Place);
        Assert.Null(root.At("spare", "at"));
        Assert.Null(root.At("nothing", "at"));
    }

    [Fact]
    public void A_missing_file_is_refused_by_name()
    {
        var refusal = SourceText.Load(Path.Combine(AppContext.BaseDirectory, "no-such-file.yaml"), YamlTree.Longest).Refusal!;
        Assert.Equal("there is no such file.", refusal.Message);
    }

    [Fact]
    public void A_file_that_is_not_text_or_too_large_is_refused()
    {
        var path = Path.Combine(Path.GetTempPath(), $"heaveline-{Guid.NewGuid():N}.yaml");
        try
        {
            File.WriteAllBytes(path, [0x74, 0x3A, 0xFF, 0xFE]);
            Assert.Equal("the file is not UTF-8 text.", SourceText.Load(path, YamlTree.Longest).Refusal!.Message);
            File.WriteAllBytes(path, new byte[(256 * 1024) + 1]);
            Assert.Equal(
                "the file has 262145 bytes; it must be 262144 or less.", SourceText.Load(path, YamlTree.Longest).Refusal!.Message);
            File.WriteAllText(path, Whole);
            Assert.NotNull(YamlReading.Read(SourceText.Load(path, YamlTree.Longest).Source, Sample.Bench).Value);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_warning_keeps_its_value()
    {
        var reading = Sample.Read("title: One\nsprings: [{rate: 20 N/mm, free-length: 3 in}]\nfriction: 30\n");
        Assert.NotNull(reading.Value);
        Assert.Equal(
            """
            bench.yaml:3:11: warning: friction is above 1; few pairs of surfaces reach that.
             3 | friction: 30
               |           ^^
               = Was it given in per cent?
            """.ReplaceLineEndings("\n"),
            reading.Format());
    }

    [Fact]
    public void A_key_outside_the_shape_is_a_programmers_error() =>
        Assert.Throws<InvalidOperationException>(() =>
            YamlReading.Read(new SourceText("x.yaml", "wire: 2 mm"), new Shape("s", "m", Sample.Wire).As(f => f.Optional(Sample.Title) ?? "none")));
}
