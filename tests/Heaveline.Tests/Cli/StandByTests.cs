using System.Globalization;
using Heaveline.Cli.Commands;
using Heaveline.Cli.Output;
using Heaveline.Cluster;
using Heaveline.Files.Crews;
using Heaveline.Quantities;
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

        Assert.Throws<RefusedValueException>(() => new CrewSheet { Name = "lab", NotedIn = "redis 127.0.0.1:1", CodeFile = "a", Threads = 0 });
        Assert.Contains("fewer than 20 letters and digits", Spoken.Of("stand-by", crew).Remarks, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("redis 127.0.0.1:6379,password=harebell", "has a password under noted-in")]
    [InlineData("postgres Host=127.0.0.1;Pwd=harebell", "has a password under noted-in")]
    [InlineData("postgres Host=127.0.0.1;PSW=harebell", "has a password under noted-in")]
    [InlineData("postgres Host=127.0.0.1;SSL Password=harebell;Database=a", "has a password under noted-in")]
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

    [Theory]
    [InlineData("postgres Host=127.0.0.1;Username=pwdadmin;Database=psw", true)]
    [InlineData("postgres Host=127.0.0.1; Password = harebell", false)]
    [InlineData("postgres Host=127.0.0.1;password=harebell", false)]
    [InlineData("postgres Host=127.0.0.1;PSW=harebell", false)]
    [InlineData("postgres Host=127.0.0.1;PWD=harebell", false)]
    [InlineData("postgres Host=127.0.0.1;SslPassword=harebell", false)]
    [InlineData("postgres Host=127.0.0.1;Passfile=/etc/heaveline.pass", true)]
    [InlineData("redis 127.0.0.1:1,user=pwdadmin", true)]
    [InlineData("redis 127.0.0.1:1,Password=harebell", false)]
    [InlineData("redis somebody:harebell@127.0.0.1:1", false)]
    [InlineData("postgres Host=somebody:harebell@127.0.0.1", false)]
    [InlineData("postgres Host=127.0.0.1;Username=somebody@lab", true)]
    public void What_is_checked_is_what_is_taken(string notedIn, bool isTaken)
    {
        using var scratch = new Scratch();
        Assert.Equal(isTaken ? ExitCode.Done : ExitCode.Refused, Spoken.Of("check", Written(scratch, notedIn)).Code);
        if (isTaken)
        {
            Assert.NotNull(Membership.Of(notedIn));
        }
        else
        {
            Assert.Throws<RefusedValueException>(() => Membership.Of(notedIn));
        }
    }

    [Fact]
    public void A_code_that_cannot_be_written_leaves_no_file_and_one_that_is_there_stays()
    {
        using var scratch = new Scratch();
        var path = scratch["lab.code"];
        var full = Assert.Throws<Stopped>(() => Crews.NewFile(path, _ => throw new IOException("No space left on device")));
        Assert.Contains("cannot be made", full.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(path));
        Crews.NewFile(path, writer => writer.Write("one"));
        var there = Assert.Throws<Stopped>(() => Crews.NewFile(path, writer => writer.Write("another")));
        Assert.Contains("there is a code in", there.Message, StringComparison.Ordinal);
        Assert.Equal("one", File.ReadAllText(path));
        var away = Assert.Throws<Stopped>(() => Crews.NewFile(Path.Combine(scratch["none"], "lab.code"), writer => writer.Write("one")));
        Assert.Contains("cannot be made", away.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_file_of_a_code_is_refused_with_what_it_is()
    {
        using var scratch = new Scratch();
        var crew = Written(scratch, "redis 127.0.0.1:1");
        string Said()
        {
            var said = Spoken.Of("stand-by", crew);
            Assert.Equal(ExitCode.Refused, said.Code);
            return said.Remarks;
        }

        Directory.CreateDirectory(scratch["lab.code"]);
        Assert.Contains("is a folder", Said(), StringComparison.Ordinal);
        Directory.Delete(scratch["lab.code"]);
        Crews.NewFile(scratch["lab.code"], writer => writer.Write(new string('A', 3_000_000)));
        Assert.Contains("is longer than 1024 bytes", Said(), StringComparison.Ordinal);
        File.Delete(scratch["lab.code"]);
        Crews.NewFile(scratch["lab.code"], writer => writer.Write(new string('A', 30)));
        Assert.Contains("of fewer than 8 different ones", Said(), StringComparison.Ordinal);
        File.Delete(scratch["lab.code"]);
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        File.CreateSymbolicLink(scratch["lab.code"], "/no/such/file");
        Assert.Contains("it is a link to '/no/such/file', where nothing is.", Said(), StringComparison.Ordinal);
        File.Delete(scratch["lab.code"]);
        using var made = System.Diagnostics.Process.Start("mkfifo", ["-m", "600", scratch["lab.code"]]);
        made.WaitForExit();
        Assert.Contains("is no regular file but a pipe", Said(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("stand-by", "--threads", "eight")]
    [InlineData("stand-by", "--threads", "1025")]
    [InlineData("stand-by", "--name", "")]
    [InlineData("help-out", "--threads", "eight")]
    public void An_option_that_cannot_be_read_is_a_wrong_use(string command, string option, string word)
    {
        string[] line = command == "help-out" ? [command, "127.0.0.1:9", "ABCD-EFGH-JKMN", option, word] : [command, "lab.yaml", option, word];
        var said = Spoken.Of(line);
        Assert.Equal(ExitCode.WrongUsage, said.Code);
        Assert.Contains($"{option}", said.Remarks, StringComparison.Ordinal);
        Assert.Contains(" 1 to ", said.Remarks, StringComparison.Ordinal);
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
