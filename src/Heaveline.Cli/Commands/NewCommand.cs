using System.CommandLine;
using System.Text;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Files.Cars;

namespace Heaveline.Cli.Commands;

/// <summary>Begins a car file: every key that must be there as a blank, every other as a comment.</summary>
internal static class NewCommand
{
    public static Command Of(Streams streams)
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "The car file to begin, ending in .yaml; it must not be there yet. Without it the text is printed.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command(
            "new",
            """
            Begin the file of a car of your own: blanks for what must be measured, every other key as a comment with an example.

            Example:
              heaveline new my-car.yaml
            """)
        {
            file,
        };
        command.SetAction(r => Run(streams, r.GetValue(file)));
        return command;
    }

    private static int Run(Streams streams, string? file)
    {
        if (file is null)
        {
            streams.Results.Write(CarFile.Template("My car"));
            return ExitCode.Done;
        }

        if (!file.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || Path.GetFileNameWithoutExtension(file).Length == 0)
        {
            throw new Stopped($"heaveline: '{file}' does not end in .yaml, as car files do. Give it such a name.", ExitCode.WrongUsage);
        }

        if (Directory.Exists(file))
        {
            throw new Stopped($"heaveline: '{file}' is a folder. Give another name.", ExitCode.Refused);
        }

        try
        {
            var bytes = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(CarFile.Template(Path.GetFileNameWithoutExtension(file)));
            if (!WholeFile.WriteNew(file, bytes))
            {
                throw new Stopped($"heaveline: '{file}' is there already and stays as it is. Give another name.", ExitCode.Refused);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Most say already which file it is.
            var words = FileTrouble.Words(e);
            var isNamed = words.StartsWith($"'{file}'", StringComparison.Ordinal);
            throw new Stopped($"heaveline: {(isNamed ? words : $"'{file}' was not written: {words}")}", ExitCode.NotComputed);
        }

        streams.Results.WriteLine($"{file}: begun. Fill in its blanks, then: heaveline check {file}");
        return ExitCode.Done;
    }
}
