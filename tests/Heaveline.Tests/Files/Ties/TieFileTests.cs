using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Ties;
using Heaveline.Tests.House;
using Heaveline.Ties;

namespace Heaveline.Tests.Files.Ties;

public class TieFileTests
{
    private const string Sheet =
        """
        ties: an evening
        over: plank
        load: driver
        passes:
          - {speed: 20 km/h ± 1 km/h, front-left: 31 mm ± 1 mm, rear: at least 44 mm}
          - {speed: 12 mph, front: 1.5 in}
        front-swings: {count: 2, time: 1.6 s}
        rear-heights: {before: 392 mm, after: 371 mm}
        rear-damper-moves: 39 mm for 50 mm at the wheel
        """;

    [Fact]
    public void A_sheet_is_read_as_it_says()
    {
        var sheet = Read(Sheet).Value!;
        var (first, second) = (sheet.Readings.Passes[0], sheet.Readings.Passes[1]);
        Assert.Equal(("an evening", "plank", "driver"), (sheet.Name, sheet.Over, sheet.Load));
        Assert.Equal(20.0 / 3.6, first.Speed.Si, 1e-12);
        Assert.Equal((TiePlace.Rear, 0.044, true), (first.Readings[0].Place, first.Readings[0].Travel.Si, first.Readings[0].IsAtLeast));
        Assert.Equal((TiePlace.FrontLeft, 0.031, false), (first.Readings[1].Place, first.Readings[1].Travel.Si, first.Readings[1].IsAtLeast));
        Assert.Equal(1e-3, first.Readings[1].Travel.Doubt.HalfWidth, 1e-12);
        Assert.Equal(0.0381, second.Readings[0].Travel.Si, 1e-12);
        Assert.Equal(AxleEnd.Front, Assert.Single(sheet.Readings.Swings).End);
        Assert.Equal(0.021, Assert.Single(sheet.Readings.Heights).Fall, 1e-12);
        Assert.Equal(0.78, sheet.Readings.RearRatio!.AtReference.Si, 1e-12);
        Assert.Null(sheet.Readings.FrontRatio);
    }

    [Theory]
    [InlineData("rear: at least 44 mm", "raer: at least 44 mm", "5:57", "is not a key")]
    [InlineData("front: 1.5 in", "front: 1.5 kg", "6:28", "kg")]
    [InlineData("at least 44 mm", "at least 44", "5:", "44")]
    [InlineData("front: 1.5 in", "front: 3 m", "6:", "3 m")]
    [InlineData("front: 1.5 in", "front: 38 mm ± 1e9 mm", "6:", "known to 400 mm or better")]
    [InlineData(", front: 1.5 in", "", "6:", "no tie")]
    [InlineData("over: plank\n", "", "1:1", "over")]
    public void A_slip_is_refused_in_its_line(string right, string wrong, string place, string says)
    {
        var reading = Read(Sheet.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Null(reading.Value);
        Assert.Contains($"sheet.yaml:{place}", reading.Format(), StringComparison.Ordinal);
        Assert.Contains(says, reading.Format(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_obstacles_file_is_looked_for_beside_the_sheet()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "sheet.yaml"), Sheet.Replace("over: plank", "over: board.yaml", StringComparison.Ordinal));
            Assert.Equal(Path.Combine(folder, "board.yaml"), TieFile.Load(Path.Combine(folder, "sheet.yaml")).Value!.Over);
            Assert.Equal("village-hump", TieFile.Load(Path.Combine(Checkout.Root, "examples", "ties", "fern-saloon-hump.yaml")).Value!.Over);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static Heaveline.Files.Yaml.Reading<TieSheet> Read(string text) => TieFile.Read(new SourceText("sheet.yaml", text));
}
