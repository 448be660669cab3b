using System.Net;
using System.Net.Sockets;
using Heaveline.Cli.Output;
using Heaveline.Cluster;
using Heaveline.Files;
using Heaveline.Files.Crews;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>Crews from their files.</summary>
internal static class Crews
{
    private const int MostOfCode = 1024;
    private const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    /// <summary>The crew of a file, and what its file says.</summary>
    public static (Crew Crew, CrewSheet Sheet) Of(Streams streams, string file)
    {
        var sheet = Sheet(streams, file);
        try
        {
            return (new Crew { Name = sheet.Name, NotedIn = Membership.Of(sheet.NotedIn), Code = Code(file, sheet.CodeFile) }, sheet);
        }
        catch (RefusedValueException refused)
        {
            throw new Stopped($"heaveline: {file}, noted-in: {refused.Message}", ExitCode.Refused);
        }
    }

    /// <summary>Makes the file of a crew's code.</summary>
    public static int MakeCode(Streams streams, string file)
    {
        var path = Sheet(streams, file).CodeFile;
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
            {
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            }

            using var writer = new StreamWriter(path, options);
            writer.WriteLine(Crew.FreshCode());
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new Stopped(
                File.Exists(path)
                    ? $"heaveline: there is a code in '{path}' already: who has it would be shut out by another. Delete it first if that is meant."
                    : $"heaveline: '{path}' cannot be made: {FileTrouble.Words(trouble)}",
                ExitCode.Refused);
        }

        streams.Results.WriteLine($"A new code is in '{path}'. Copy this file to every machine of the crew, by a way that nobody else sees.");
        return ExitCode.Done;
    }

    /// <summary>
    /// Where a study listens that names no place: at the address by which this machine and the database, and so the crew, reach each other.
    /// </summary>
    public static IPEndPoint Place(Crew crew)
    {
        try
        {
            return new IPEndPoint(crew.OwnAddress(), 0);
        }
        catch (SocketException unknown)
        {
            throw new RunFailedException(
                $"The database of the crew '{crew.Name}' is at a machine that is not known here: {unknown.Message}.",
                "Look at what its file says under noted-in.");
        }
    }

    private static CrewSheet Sheet(Streams streams, string file)
    {
        var reading = CrewFile.Load(file);
        if (reading.Value is { } sheet)
        {
            return sheet;
        }

        streams.Remarks.WriteLine(reading.Format());
        throw new Stopped($"heaveline: '{file}' is not taken as the file of a crew.", ExitCode.Refused);
    }

    private static string Code(string file, string path)
    {
        string code;
        try
        {
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & Others) != 0)
            {
                throw new Stopped(
                    $"heaveline: '{path}', the code of the crew, may be read or changed by others of this machine: whoever has it reads every study "
                    + "of the crew. Take that away (chmod 600), and make another code if somebody may have read it.",
                    ExitCode.Refused);
            }

            using var reader = new StreamReader(path);
            var text = new char[MostOfCode];
            code = new string(text, 0, reader.ReadBlock(text)).Trim();
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new Stopped(
                $"heaveline: the code of the crew cannot be read from '{path}': {FileTrouble.Words(trouble)} At one machine it is made by "
                + $"'heaveline stand-by {file} --new-code'; the others get a copy.",
                ExitCode.Refused);
        }

        return Crew.IsLong(code)
            ? code
            : throw new Stopped(
                $"heaveline: '{path}' holds a code of fewer than {Crew.ShortestCode} letters and digits, which could be guessed: have one made by "
                + $"'heaveline stand-by {file} --new-code'.",
                ExitCode.Refused);
    }
}
