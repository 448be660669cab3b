using System.Diagnostics;
using System.Runtime.InteropServices;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>The pages, left to the program beside this one that has them: this one turns into it.</summary>
internal static partial class Serving
{
    private const string Name = "Heaveline.Cli";

    /// <summary>Comes back only when the other program cannot be started.</summary>
    /// <remarks>
    /// It takes this one's place in the same process and reads the command line again: signals, the terminal and the exit code are its own.
    /// What is asked is therefore not looked at here.
    /// </remarks>
    public static Task<int> Run(Streams streams, ServeAsked asked, CancellationToken stop)
    {
        Become(streams);
        return Task.FromResult(ExitCode.NotComputed);
    }

    /// <summary>Turns into the program beside this one, with the same words; comes back never.</summary>
    public static void Become(Streams streams)
    {
        var program = Path.Combine(AppContext.BaseDirectory, Name);
        if (!File.Exists(program) || !File.Exists(program + ".dll"))
        {
            throw new Stopped(
                $"heaveline: the program with the pages, {Name}, is not beside this one in {AppContext.BaseDirectory}; "
                + "unpack all of Heaveline there.",
                ExitCode.NotComputed);
        }

        if (FileVersionInfo.GetVersionInfo(program + ".dll").ProductVersion is var version && version != Release.Version)
        {
            throw new Stopped(
                $"heaveline: this program is Heaveline {Release.Version}, but {program} is {version ?? "of no version"}; "
                + "unpack all of Heaveline anew.",
                ExitCode.NotComputed);
        }

        streams.Results.Flush();
        string?[] words = [program, .. Environment.GetCommandLineArgs()[1..], null];
        Execute(program, words);
        throw new Stopped(
            $"heaveline: {program} cannot be started: {Marshal.GetPInvokeErrorMessage(Marshal.GetLastPInvokeError())}.", ExitCode.NotComputed);
    }

    [LibraryImport("libc", EntryPoint = "execv", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Execute(string path, string?[] words);
}
