using System.Globalization;
using Heaveline.Cli.Output;
using Heaveline.Tests.Cluster;

namespace Heaveline.Tests.Cli;

/// <summary>Programs that stand by for a crew and help with what another one begins, and the file that they share.</summary>
[Collection(SeveralMachines.Name)]
public class StandByTests
{
    private static readonly string[] Study =
        ["choose", "examples/garage/fern-saloon.yaml", "--parts", "examples/parts/village-autumn.yaml", "--load", "driver", "--draws"];

    [Fact]
    public async Task Programs_that_stand_by_help_and_one_that_is_killed_changes_no_byte()
    {
        using var server = await OwnServer.Redis();
        using var scratch = new Scratch();
        var crew = Written(scratch, string.Create(CultureInfo.InvariantCulture, $"redis 127.0.0.1:{server.Port}"));
        Assert.Equal(0, Spoken.Of("stand-by", crew, "--new-code").Code);
        using var birch = new Running(["stand-by", crew, "--name", "birch", "--threads", "1"]);
        await birch.Says("Standing by for the crew 'lab', as 'birch', on 1 thread.");
        // Where the study is over before both have joined it, a longer one.
        for (var draws = 60; ; draws *= 4)
        {
            using var cedar = new Running(["stand-by", crew, "--name", "cedar"]);
            await cedar.Says("Standing by for the crew 'lab', as 'cedar', on 2 threads.");
            using var study = new Running([.. Study, $"{draws}", "--crew", crew]);
            if (!await study.RemarksOrEnds("'birch' helps") || !await study.RemarksOrEnds("'cedar' helps, on 2 threads"))
            {
                Assert.True(draws < 10_000, "No study is so long that anybody joins it in time.");
                continue;
            }

            cedar.Process.Kill();
            Assert.True(await study.Ends() == 0, study.Remarks);
            Assert.DoesNotContain(await File.ReadAllTextAsync(scratch["lab.code"], TestContext.Current.CancellationToken), study.Remarks);
            Assert.Equal(Spoken.Of([.. Study, $"{draws}"]).Results, study.Results);
            break;
        }

        Assert.False(birch.Process.HasExited, birch.Remarks);
    }

    [Fact]
    public void A_code_is_made_once_is_read_by_its_owner_alone_and_another_is_refused()
    {
        using var scratch = new Scratch();
        var crew = Written(scratch, "redis 127.0.0.1:1");
        var missing = Spoken.Of("stand-by", crew);
        Assert.Equal(ExitCode.Refused, missing.Code);
        Assert.Contains("--new-code", missing.Remarks, StringComparison.Ordinal);
        var made = Spoken.Of("stand-by", crew, "--new-code");
        Assert.Equal((0, ""), (made.Code, made.Remarks));
        var code = File.ReadAllText(scratch["lab.code"]);
        Assert.Matches("^([A-HJ-NP-Z2-9]{4}-){5}[A-HJ-NP-Z2-9]{4}\r?\n$", code);
        Assert.Equal(ExitCode.Refused, Spoken.Of("stand-by", crew, "--new-code").Code);
        Assert.Equal(code, File.ReadAllText(scratch["lab.code"]));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(scratch["lab.code"]));
            File.SetUnixFileMode(scratch["lab.code"], UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
            var open = Spoken.Of([.. Study, "10", "--crew", crew]);
            Assert.Equal(ExitCode.Refused, open.Code);
            Assert.Contains("may be read or changed by others of this machine", open.Remarks, StringComparison.Ordinal);
        }

        File.Delete(scratch["lab.code"]);
        File.WriteAllText(scratch["lab.code"], "ABCD-EFGH-JKMN\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(scratch["lab.code"], UnixFileMode.UserRead | UnixFileMode.UserWrite);
        }

        Assert.Contains("fewer than 20 letters and digits", Spoken.Of("stand-by", crew).Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("redis 127.0.0.1:6379,password=harebell", "has a password under noted-in")]
    [InlineData("postgres Host=127.0.0.1;Pwd=harebell", "has a password under noted-in")]
    [InlineData("mongo 127.0.0.1", "names no database.")]
    public void A_file_with_a_password_or_without_a_database_is_refused_and_the_password_is_not_said_again(string notedIn, string words)
    {
        using var scratch = new Scratch();
        var crew = Written(scratch, notedIn);
        foreach (var line in new[] { new[] { "stand-by", crew }, ["check", crew], [.. Study, "10", "--crew", crew] })
        {
            var said = Spoken.Of(line);
            Assert.Equal(ExitCode.Refused, said.Code);
            Assert.Contains(words, said.Remarks, StringComparison.Ordinal);
            Assert.DoesNotContain("harebell", said.Remarks + said.Results, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Words_that_do_not_go_together_are_refused()
    {
        Assert.Equal(ExitCode.WrongUsage, Spoken.Of([.. Study, "10", "--crew", "lab.yaml", "--members", "redis 127.0.0.1:1"]).Code);
        Assert.Equal(ExitCode.Refused, Spoken.Of([.. Study, "10", "--crew", "no-such-file.yaml"]).Code);
        Assert.Equal(ExitCode.WrongUsage, Spoken.Of("stand-by", "lab.yaml", "--threads", "0").Code);
        var none = Spoken.Of("stand-by", "examples/garage/fern-saloon.yaml");
        Assert.Equal(ExitCode.Refused, none.Code);
        Assert.Contains("is not taken as the file of a crew", none.Remarks, StringComparison.Ordinal);
    }

    private static string Written(Scratch scratch, string notedIn)
    {
        File.WriteAllText(scratch["lab.yaml"], $"crew: lab\nthreads: 2\ncode-file: lab.code\nnoted-in: {notedIn}\n");
        return scratch["lab.yaml"];
    }
}
