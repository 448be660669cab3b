using System.Diagnostics;
using Heaveline.Cli.Output;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Whoever closes standard output or the error stream gets words or an exit code, never a stack trace.</summary>
public class ClosedOutputTests
{
    [Theory]
    [InlineData("--version")]
    [InlineData("--help")]
    [InlineData("describe", "examples/garage/fern-saloon.yaml")]
    [InlineData("check", "examples/garage/fern-saloon.yaml")]
    [InlineData("serve", "examples/garage", "--port", "0")]
    public async Task Standard_output_that_is_closed_is_said(params string[] line)
    {
        var (code, remarks) = await Run(">&-", line);
        Assert.Equal(ExitCode.NotComputed, code);
        Assert.Contains("standard output is closed.\n", remarks);
        Assert.DoesNotContain("Unhandled", remarks);
    }

    [Fact]
    public async Task An_error_stream_that_is_closed_leaves_the_exit_code()
    {
        var (code, remarks) = await Run("2>&-", "describe", "nowhere.yaml");
        Assert.Equal((1, ""), (code, remarks));
    }

    private static async Task<(int Code, string Remarks)> Run(string closing, params string[] line)
    {
        using var process = Process.Start(new ProcessStartInfo(
            "/bin/sh", ["-c", $"exec \"$0\" \"$@\" {closing}", Path.Combine(AppContext.BaseDirectory, "Heaveline.Cli"), .. line])
        {
            WorkingDirectory = Checkout.Root,
            RedirectStandardError = true,
        })!;
        var remarks = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, remarks.ReplaceLineEndings("\n"));
    }
}
