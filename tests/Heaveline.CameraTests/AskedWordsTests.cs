using Heaveline.Camera;

namespace Heaveline.CameraTests;

/// <summary>What is asked of the camera part is refused before a film is opened or drawn for nothing.</summary>
public class AskedWordsTests
{
    [Theory]
    [InlineData("--rate", "0", "--rate is 0; it must be 10 to 1000.")]
    [InlineData("--rate", "1e9", "--rate is 1e9; it must be 10 to 1000.")]
    [InlineData("--rate", "fast", "'fast' of --rate is no number.")]
    public void A_number_out_of_bounds_is_refused_with_them(string key, string value, string said) => Assert.Equal(
        said, Assert.Throws<FormatException>(() => Of(key, value).Number(key, 60.0, 10.0, 1000.0)).Message);

    [Theory]
    [InlineData("-1")]
    [InlineData("1e300")]
    public void A_frame_lies_within_a_day_of_the_first(string at) => Assert.Equal(
        $"--at is {at}; it must be 0 to 86400 s.", Assert.Throws<FormatException>(() => Of("--at", at).Time).Message);

    [Theory]
    [InlineData("d.txt")]
    [InlineData(".")]
    [InlineData("d.mp4")]
    public void A_picture_is_written_under_its_own_ending(string to) => Assert.Equal(
        $"--to is {to}; its name must end in .png.", Assert.Throws<FormatException>(() => Of("--to", to).To(".png")).Message);

    [Fact]
    public void A_box_goes_from_its_upper_left_to_its_lower_right_corner()
    {
        var (from, to) = Of("--box", "1,2,3,4").Box;
        Assert.Equal((1.0, 2.0, 3.0, 4.0), (from.X, from.Y, to.X, to.Y));
        Assert.StartsWith("--box is 5,5,1,1; ", Assert.Throws<FormatException>(() => Of("--box", "5,5,1,1").Box).Message, StringComparison.Ordinal);
    }

    private static AskedWords Of(string key, string value) => AskedWords.Of(["frame", "film.mp4", key, value], _ => [key]);
}
