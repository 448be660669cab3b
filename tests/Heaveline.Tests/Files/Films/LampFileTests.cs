using Heaveline.Files;
using Heaveline.Files.Films;
using Heaveline.Films;

namespace Heaveline.Tests.Files.Films;

/// <summary>The kept brightness of a headlamp.</summary>
public class LampFileTests
{
    [Theory]
    [InlineData("")]
    [InlineData("0,1\n")]
    [InlineData("0,0\n0.1,0\n0.2,0\n0.3,0\n0.4,0\n0.5,0\n0.6,0\n0.7,0\n0.8,0\n0.9,0\n1,0\n1.1,0\n1.2,0\n")]
    public void A_file_of_no_row_of_one_or_of_no_light_is_refused_with_its_place(string rows)
    {
        var reading = LampFile.Read(new SourceText("lamp.csv", $"{LampText.First}\nsaturated,0\n{LampText.Head}\n{rows}"));
        Assert.Null(reading.Value);
        Assert.Contains("The brightness is refused", Assert.Single(reading.Refusals).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_frame_without_the_lamp_is_written_blank_and_read_as_one()
    {
        var lamp = new LampTrack
        {
            Times = [.. Enumerable.Range(0, 40).Select(i => i / 60.0)],
            Brightness = [.. Enumerable.Range(0, 40).Select(i => i == 7 ? 0.0 : 100.0 + i)],
        };
        var text = LampText.Of(lamp);
        Assert.EndsWith(",", text.Split('\n')[3 + 7], StringComparison.Ordinal);
        Assert.Equal(lamp.Brightness, LampFile.Read(new SourceText("lamp.csv", text)).Value!.Brightness);
    }
}
