using System.Diagnostics;

namespace Heaveline.Tests.House;

/// <summary>When ./run builds, with a compiler that only notes that it was called.</summary>
public sealed class RunTests : IDisposable
{
    private const string Compiler = """
        #!/bin/sh
        [ "$1" = build ] || { echo 10; exit; }
        while [ "$1" != --artifacts-path ]; do case $1 in --no-incremental) how=" anew";; esac; shift; done
        mkdir -p "$2/bin/Heaveline.Cli/release"
        printf '#!/bin/sh\necho ran\n' >"$2/bin/Heaveline.Cli/release/Heaveline.Cli"
        chmod +x "$2/bin/Heaveline.Cli/release/Heaveline.Cli"
        echo "built$how" >>"$LOG"
        """;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("heaveline-run-");

    [Fact]
    public void It_builds_anew_where_the_folder_has_moved_and_not_twice_in_one_place()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "./run is for shells.");
        var (first, second) = (Path.Combine(folder.FullName, "first"), Path.Combine(folder.FullName, "second"));
        Directory.CreateDirectory(Path.Combine(first, "src"));
        Directory.CreateDirectory(Path.Combine(first, "eng"));
        File.WriteAllText(Path.Combine(first, "src", "Program.cs"), "");
        File.WriteAllText(Path.Combine(first, "global.json"), "{}");
        File.Copy(Path.Combine(Checkout.Root, "run"), Path.Combine(first, "run"));
        File.Copy(Path.Combine(Checkout.Root, "eng", "setup.sh"), Path.Combine(first, "eng", "setup.sh"));
        File.WriteAllText(Path.Combine(folder.FullName, "dotnet"), Compiler.ReplaceLineEndings("\n"));
        using (var mode = Process.Start("chmod", ["+x", Path.Combine(folder.FullName, "dotnet")]))
        {
            mode.WaitForExit();
            Assert.Equal(0, mode.ExitCode);
        }

        Assert.Equal("ran\n", Ran(first, "one"));
        Assert.Equal("ran\n", Ran(first, "one"));
        Directory.Move(first, second);
        Assert.Equal("ran\n", Ran(second, "one"));
        Assert.Equal("ran\n", Ran(second, "one"));
        Assert.Equal("ran\n", Ran(second, "another"));
        Assert.Equal(["built anew", "built anew", "built anew"], File.ReadLines(Path.Combine(folder.FullName, "log")));
    }

    public void Dispose() => folder.Delete(recursive: true);

    private string Ran(string checkout, string user)
    {
        using var process = Process.Start(new ProcessStartInfo("bash", [Path.Combine(checkout, "run"), "--version"])
        {
            RedirectStandardOutput = true,
            Environment =
            {
                ["PATH"] = folder.FullName + ":" + Environment.GetEnvironmentVariable("PATH"),
                ["LOG"] = Path.Combine(folder.FullName, "log"),
                ["NUGET_PACKAGES"] = Path.Combine(folder.FullName, user),
            },
        })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return said;
    }
}
