using Heaveline.Files;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

public class RepeatedWarningTests
{
    [Fact]
    public void What_is_said_of_one_place_several_times_in_the_same_words_is_said_once()
    {
        var reader = new Reader(new SourceText("car.yaml", "rate: 1200\nother: 3\n"));
        for (var i = 0; i < 7; i++)
        {
            reader.Warn(new Place(1, 7, 4), "rate is much.", "Look again.");
        }

        reader.Warn(new Place(2, 8, 1), "rate is much.", "Look again.");
        reader.Warn(new Place(1, 7, 4), "rate is odd.", "Look again.");
        Assert.Equal([(1, "rate is much."), (1, "rate is odd."), (2, "rate is much.")], reader.Warnings.Select(one => (one.Line, one.Message)));
    }
}
