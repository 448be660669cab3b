using Heaveline.Files;
using Heaveline.Files.Roads;

namespace Heaveline.Tests.Files;

/// <summary>Sizes near the least number that there is: a road of them is refused in a moment, not drawn until the memory ends.</summary>
public class TinyRoadTests
{
    [Theory]
    [InlineData("versine: {height: -70 mm, length: 1e-308 m}")]
    [InlineData("sine: {amplitude: 8 mm, wavelength: 1e-300 m, waves: 12}")]
    public void A_road_too_short_to_be_drawn_is_refused_in_a_moment(string line)
    {
        var reading = Fifo.Soon(() => RoadFile.Read(new SourceText("tiny.yaml", $"road: tiny\n{line}\n")));
        Assert.Contains("long enough", Assert.Single(reading.Refusals).Message, StringComparison.Ordinal);
    }
}
