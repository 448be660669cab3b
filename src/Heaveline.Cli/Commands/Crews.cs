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
            // Not its advice: a crew cannot do without a database.
            throw new Stopped($"heaveline: {file}, noted-in: {refused.Reason}", ExitCode.Refused);
        }
    }

    /// <summary>Makes the file of a crew's code.</summary>
    public static int MakeCode(Streams streams, string file)
    {
        var path = Sheet(streams, file).CodeFile;
        NewFile(path, writer => writer.WriteLine(Crew.FreshCode()));
        streams.Results.WriteLine($"A new code is in '{path}'. Copy this file to every machine of the crew, by a way that nobody else sees.");
        return ExitCode.Done;
    }

    /// <summary>Makes a file that its owner alone may read, and never over another; one that cannot be written to its end does not stay.</summary>
    internal static void NewFile(string path, Action<TextWriter> write)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        var isMade = false;
        try
        {
            using var file = new FileStream(path, options);
            isMade = true;
            using var writer = new StreamWriter(file);
            write(writer);
            writer.Flush();
            file.Flush(flushToDisk: true);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            if (isMade)
            {
                File.Delete(path);
            }

            throw new Stopped(
                !isMade && FileNode.Of(path) == FileNodeKind.File
                    ? $"heaveline: there is a code in '{path}' already: who has it would be shut out by another. Delete it first if that is meant."
                    : $"heaveline: '{path}' cannot be made: {FileTrouble.Words(trouble)}",
                ExitCode.Refused);
        }
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
        var advice = $"At one machine it is made by 'heaveline stand-by {file} --new-code'; the others get a copy.";
        var other = FileNode.Of(path) == FileNodeKind.Folder ? "a folder" : FileNode.Other(path);
        if (other is not null)
        {
            throw new Stopped(
                $"heaveline: '{path}' should be the file of the crew's code, and is {other}: write another name under code-file. {advice}",
                ExitCode.Refused);
        }

        string code;
        try
        {
            // Of the file that is open, not of one that has taken its name meanwhile.
            using var opened = File.OpenRead(path);
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(opened.SafeFileHandle) & Others) != 0)
            {
                throw new Stopped(
                    $"heaveline: '{path}', the code of the crew, may be read or changed by others of this machine: whoever has it reads every study "
                    + "of the crew. Take that away (chmod 600), and make another code if somebody may have read it.",
                    ExitCode.Refused);
            }

            if (opened.Length > MostOfCode)
            {
                throw new Stopped(
                    $"heaveline: '{path}' is longer than {MostOfCode} bytes, which no code of a crew is: look whether code-file names another file. "
                    + advice,
                    ExitCode.Refused);
            }

            using var reader = new StreamReader(opened);
            var text = new char[MostOfCode];
            code = new string(text, 0, reader.ReadBlock(text)).Trim();
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new Stopped(
                $"heaveline: the code of the crew cannot be read from '{path}': {WhyUnread(path, trouble)} {advice}",
                ExitCode.Refused);
        }

        return Crew.IsHardToGuess(code)
            ? code
            : throw new Stopped(
                $"heaveline: '{path}' holds a code of fewer than {Crew.ShortestCode} letters and digits, or of fewer than {Crew.FewestSigns} "
                + $"different ones, which could be guessed: delete it, and have one made by 'heaveline stand-by {file} --new-code'.",
                ExitCode.Refused);
    }

    private static string WhyUnread(string path, Exception trouble) => FileNode.Of(path) == FileNodeKind.Nothing
        && new FileInfo(path).LinkTarget is { } target
            ? $"it is a link to '{target}', where nothing is."
            : FileTrouble.Words(trouble);
}
