namespace Heaveline.Tests.Cli;

public class NewTests
{
    [Fact]
    public void A_new_car_file_is_begun_once_and_says_what_is_missing()
    {
        using var scratch = new Scratch();
        var file = scratch["my-car.yaml"];
        var said = Spoken.Of("new", file);
        Assert.Equal(0, said.Code);
        Assert.Contains("Fill in its blanks", said.Results, StringComparison.Ordinal);
        var text = File.ReadAllText(file);
        Assert.Contains("car: my-car", text, StringComparison.Ordinal);

        var again = Spoken.Of("new", file);
        Assert.Equal(1, again.Code);
        Assert.Contains("is there already and stays as it is", again.Remarks, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(file));

        var check = Spoken.Of("check", file);
        Assert.Equal(1, check.Code);
        Assert.Contains("wheelbase is not filled in yet", check.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_file_the_text_is_printed()
    {
        var said = Spoken.Of("new");
        Assert.Equal(0, said.Code);
        Assert.StartsWith("# A car of your own.", said.Results, StringComparison.Ordinal);
        Assert.Contains("car: My car", said.Results, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("my-car.txt", 2, "does not end in .yaml")]
    [InlineData(".yaml", 2, "does not end in .yaml")]
    [InlineData("no-such-folder/my-car.yaml", 3, "there is no folder")]
    public void What_cannot_be_begun_is_answered_in_words(string name, int code, string words)
    {
        using var scratch = new Scratch();
        var said = Spoken.Of("new", scratch[name]);
        Assert.Equal(code, said.Code);
        Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
    }
}
