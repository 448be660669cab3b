using System.CommandLine;
using System.CommandLine.Parsing;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Files.Drives;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Cli;

internal static class Program
{
    private static int Main(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var plain = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        using var results = new StreamWriter(new StandardStream(Console.OpenStandardOutput(), isForRemarks: false), plain, 1 << 14);
        using var remarks = new StreamWriter(new StandardStream(Console.OpenStandardError(), isForRemarks: true), plain) { AutoFlush = true };
        Console.SetError(remarks);
        var streams = new Streams(results, Console.Error, !Console.IsErrorRedirected);
        using var interruption = new Interruption(code => End(streams, code), () => streams.Grace);
        var code = Run(args, streams, interruption.Token);
        try
        {
            results.Flush();
            return code;
        }
        catch (IOException failure)
        {
            // What is still held back must not be tried again when the program ends.
            Console.Error.WriteLine($"heaveline: the results could not be written: {FileTrouble.Words(failure)}");
            Environment.Exit(ExitCode.NotComputed);
            throw;
        }
    }

    // Results that are half written stay so: they are no more than that, and whoever asked for the end wants none of them.
    private static void End(Streams streams, int code)
    {
        streams.SayStopped();
        Environment.Exit(code);
    }

    /// <summary>Runs one command line. Everything it says goes to the streams.</summary>
    internal static int Run(string[] args, Streams streams, CancellationToken stop = default)
    {
        // Numbers on the command line have a decimal point wherever the program runs.
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            // No file, car or value is called so; a line end would forge a line of what is printed.
            if (args.FirstOrDefault(arg => arg.Any(ControlCharacter.Is)) is { } odd)
            {
                streams.Remarks.WriteLine($"heaveline: '{ControlCharacter.Spelled(odd)}' holds a character that is not seen; no name or value does.");
                return ExitCode.WrongUsage;
            }

            var root = Commands.Root.Of(streams);
            var parsed = root.Parse(args.Length > 0 ? args : ["--help"]);
            if (Mistyped(root, parsed) is { } mistyped)
            {
                streams.Remarks.WriteLine($"heaveline: {mistyped}");
                streams.Remarks.WriteLine($"Try '{Called(parsed.CommandResult)} --help'.");
                return ExitCode.WrongUsage;
            }

            if (parsed.Errors.Count > 0)
            {
                foreach (var error in parsed.Errors)
                {
                    streams.Remarks.WriteLine($"heaveline: {error.Message}");
                }

                var command = parsed.CommandResult.Command;
                if (command.Arguments.Count > 0 && parsed.UnmatchedTokens is { Count: > 0 } beyond && !beyond.Any(b => b.StartsWith('-')))
                {
                    streams.Remarks.WriteLine($"heaveline: {command.Name} takes {string.Join("; ", command.Arguments.Select(Words))}");
                }

                streams.Remarks.WriteLine($"Try '{Called(parsed.CommandResult)} --help'.");
                return ExitCode.WrongUsage;
            }

            streams.Column = parsed.GetValue(Commands.Root.Column);
            // Requests to end come by the token: the library's own handler would wait for what does not listen, and fall over a second request.
            return parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    EnableDefaultExceptionHandler = false,
                    ProcessTerminationTimeout = null,
                    Output = streams.Results,
                    Error = streams.Remarks,
                },
                stop).GetAwaiter().GetResult();
        }
        catch (Stopped stopped)
        {
            streams.Remarks.WriteLine(stopped.Message);
            return stopped.Code;
        }
        catch (NoAnswerException refused) when (refused is RefusedValueException or LogRefusedException)
        {
            streams.Remarks.WriteLine($"heaveline: refused: {refused.Message}");
            return ExitCode.Refused;
        }
        catch (RunFailedException failed)
        {
            streams.Remarks.WriteLine($"heaveline: {failed.Message}");
            return ExitCode.NotComputed;
        }
        catch (OperationCanceledException)
        {
            streams.SayStopped();
            return ExitCode.NotComputed;
        }
        catch (FileNotFoundException gone) when (gone.FileName is null && !HasFolder())
        {
            streams.Remarks.WriteLine("heaveline: the folder that you are in is no longer there: change to another one.");
            return ExitCode.NotComputed;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            streams.Remarks.WriteLine($"heaveline: {FileTrouble.Words(failure)}");
            return ExitCode.NotComputed;
        }
        catch (OutOfMemoryException)
        {
            streams.Remarks.WriteLine("heaveline: this machine has not enough memory for it: take a shorter road, fewer speeds or fewer samples.");
            return ExitCode.NotComputed;
        }
        catch (Exception fault)
        {
            streams.Remarks.WriteLine(FaultWords(args, fault));
            return ExitCode.Fault;
        }
    }

    // Every relative name is looked for in it.
    private static bool HasFolder()
    {
        try
        {
            return Directory.Exists(Directory.GetCurrentDirectory());
        }
        catch (FileNotFoundException)
        {
            return false;
        }
    }

    // A command that there is not, and an option that there is not and that stands where a file could: the parser takes that for the file.
    private static string? Mistyped(Command root, ParseResult parsed)
    {
        if (parsed.CommandResult.Command == root && parsed.UnmatchedTokens is [var word, ..] && !word.StartsWith('-'))
        {
            string[] names = [.. root.Subcommands.Select(c => c.Name)];
            return $"'{word}' is no command. {Near(word, names)}There are {string.Join(", ", names)}.";
        }

        var (command, options) = (parsed.CommandResult.Command, parsed.CommandResult.Command.Options.Select(o => o.Name).ToArray());
        return parsed.CommandResult.Children.OfType<ArgumentResult>().SelectMany(a => a.Tokens)
            .FirstOrDefault(t => t.Value.StartsWith("--", StringComparison.Ordinal)) is { Value: var option }
            ? $"'{option}' is no option of {command.Name}. {Near(option, options)}".TrimEnd()
            : null;
    }

    private static string Near(string word, IEnumerable<string> known) => NearestWord.Of(word, known) is { } near ? $"Did you mean {near}? " : "";

    // One line, no stack: whoever typed the words can do nothing with it, and the words bring it back.
    private static string FaultWords(string[] args, Exception fault) =>
        $"heaveline: a fault of the program itself ({fault.GetType().Name} in {Place(fault)}). "
        + $"Please report it where you got Heaveline {Release.Version}, with your files and these words: heaveline {string.Join(' ', args)}";

    // The type that threw, found in a way that holds in a program compiled ahead of time too.
    private static string Place(Exception fault) =>
        new StackTrace(fault).GetFrame(0) is { } frame && DiagnosticMethodInfo.Create(frame)?.DeclaringTypeName is { } name
            ? name.Split('[')[0].Split('.', '+')[^1]
            : "the runtime";

    private static string Words(Argument argument) =>
        string.Create(CultureInfo.InvariantCulture, $"{argument.Name}, at most {argument.Arity.MaximumNumberOfValues}: {argument.Description}");

    // A command with those above it, as it is typed.
    private static string Called(CommandResult command) =>
        command.Parent is CommandResult above ? $"{Called(above)} {command.Command.Name}" : command.Command.Name;
}
