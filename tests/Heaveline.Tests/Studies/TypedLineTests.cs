using System.Diagnostics;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class TypedLineTests
{
    // Names in car files come from anywhere and stand in a line that people paste: the shell itself says how it reads them.
    [Theory]
    [InlineData("fern-saloon.yaml")]
    [InlineData("")]
    [InlineData("four up with luggage")]
    [InlineData("O'Fern \"north\" & south; ls | cat > x")]
    [InlineData("back\\slash \\\" and \\")]
    [InlineData("$(echo run) `echo run` $HOME it's !! \\$5")]
    [InlineData("~ * ? [a] {b,c} # Größe µ ±")]
    public void A_shell_reads_a_quoted_word_as_itself_and_runs_nothing(string word)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Needs a POSIX shell.");
        using var shell = Process.Start(
            new ProcessStartInfo("/bin/sh", ["-c", $"printf %s {TypedLine.Quoted(word)}"]) { RedirectStandardOutput = true })!;
        var read = shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        Assert.Equal((0, word), (shell.ExitCode, read));
    }

    [Fact]
    public void A_line_has_the_words_of_every_choice_in_the_order_of_the_description()
    {
        var given = new Given([("speed", "40 km/h"), ("certified", Choice.Yes), ("car", "a b.yaml"), ("load", "driver")]);
        Assert.Equal("heaveline pass \"a b.yaml\" --speed \"40 km/h\" --load driver --certified", TypedLine.Of(PassStudy.Question, given));
    }
}
