using System.Diagnostics;
using Heaveline.Files.Reporting;

namespace Heaveline.Tests.Files.Reporting;

public class AskedLineTests
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
        using var shell = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", $"printf %s {AskedLine.Quoted(word)}"]) { RedirectStandardOutput = true })!;
        var read = shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        Assert.Equal((0, word), (shell.ExitCode, read));
    }
}
