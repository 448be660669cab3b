using System.CommandLine;
using Heaveline.Files;

namespace Heaveline.Cli.Output;

/// <summary>
/// A file that an option names for writing: one whose name ends as its format does, standard output, or a pipe or device that is there.
/// </summary>
internal sealed record OutputFile
{
    private static readonly string[] Standard = ["-", "/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"];

    private OutputFile(string option, string name, string[] endings)
    {
        (Option, Name, Endings) = (option, name, endings);
        IsStandard = Standard.Contains(name);
        IsThrough = IsStandard || FileNode.Of(name) == FileNodeKind.Special;
    }

    /// <summary>The option, without its dashes.</summary>
    public string Option { get; }

    /// <summary>The file's name as given.</summary>
    public string Name { get; }

    /// <summary>The file that it is written beside, as that was given; null: it was named itself.</summary>
    public string? BesideName { get; private init; }

    /// <summary>Endings of the formats that can be written, the one without a name first.</summary>
    public string[] Endings { get; }

    /// <summary>Whether it is standard output.</summary>
    public bool IsStandard { get; }

    /// <summary>Whether what is written goes through: nothing is replaced, and no ending tells the format.</summary>
    public bool IsThrough { get; }

    /// <summary>Ending of the format to write.</summary>
    public string Ending => IsThrough ? Endings[0] : Path.GetExtension(Name);

    /// <summary>Why the name is not taken; null when it is.</summary>
    public string? Problem => IsThrough || Endings.Contains(Path.GetExtension(Name), StringComparer.OrdinalIgnoreCase)
        ? null
        : $"--{Option} '{Name}': the name must end in "
            + (Endings.Length > 1 ? $"{string.Join(", ", Endings[..^1])} or {Endings[^1]}." : $"{Endings[0]}.");

    /// <summary>Why nothing can be written under the name, found before anything is computed; null where it can.</summary>
    public Objection? NoPlace => IsThrough || string.IsNullOrWhiteSpace(Name) ? null
        : new FileInfo(Name).LinkTarget is { } target
            ? new(Option, $"{Said}: this is a link to '{target}', which is not written over. Give another name.", IsUsage: false)
        : Directory.Exists(Name) ? new(Option, $"{Said}: this is a folder, not a file. Give another name.", IsUsage: false)
        : Path.GetDirectoryName(Path.GetFullPath(Name)) is { } folder && !Directory.Exists(folder)
            ? new(Option, $"{Said}: there is no folder '{folder}'.", IsUsage: false)
            : null;

    private string Said => BesideName is { } main ? $"--{Option} '{main}' writes '{Name}' beside it" : $"--{Option} '{Name}'";

    /// <summary>What is said where the file is one of those that were read.</summary>
    public Objection IsRead => new(
        Option, $"{Said}: this file is read for the answer and is not written over. Give another name.", IsUsage: true);

    /// <summary>What is said where another output is the same file, through links or by another spelling; null where it is not.</summary>
    public Objection? IsOf(OutputFile other) => !IsStandard && !other.IsStandard && (!IsThrough || FileNode.IsPipe(Name))
        && Real(Name).Equals(Real(other.Name), OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase)
            ? new(Option, $"{Said}: this is the file of --{other.Option} too, and takes one of them. Name another.", IsUsage: true)
            : null;

    /// <summary>The file that an option names; null for none.</summary>
    public static OutputFile? Of(Option? option, string? name, params string[] endings) =>
        option is null || name is null ? null : Of(option.Name.TrimStart('-'), name, endings);

    /// <summary>The file of a name.</summary>
    public static OutputFile Of(string option, string name, params string[] endings) => new(option, name, endings);

    /// <summary>This file and those beside it, under its name with another ending; beside one that goes through there is nothing.</summary>
    /// <param name="parts">Ending and bytes of each, its own first.</param>
    public IEnumerable<(OutputFile File, byte[] Bytes)> WithThoseBeside(IReadOnlyList<(string Ending, byte[] Bytes)> parts) =>
        parts.Select((part, i) => (i == 0 ? this : Beside(part.Ending), part.Bytes)).Where((_, i) => i == 0 || !IsThrough);

    /// <summary>The file beside this one, under its name with another ending.</summary>
    /// <param name="ending">The ending.</param>
    public OutputFile Beside(string ending) => new(Option, Path.ChangeExtension(Name, ending), [ending]) { BesideName = Name };

    // Where a link leads in a circle, or the name is blank, writing says so.
    private static string Real(string path) => string.IsNullOrWhiteSpace(path) ? "" : RealPath.Of(path) ?? Path.GetFullPath(path);

    /// <summary>Writes it whole, or as it comes where it goes through.</summary>
    /// <returns>Whether a file that was there is replaced.</returns>
    public bool Write(Streams streams, byte[] bytes, CancellationToken stop)
    {
        if (IsStandard)
        {
            streams.WriteFile(bytes);
            return false;
        }

        var isThere = !IsThrough && File.Exists(Name);
        WholeFile.Write(
            Name, bytes, () => streams.Remarks.WriteLine($"heaveline: '{Name}' is a pipe: waiting until somebody reads from it."), stop);
        return isThere;
    }

    /// <summary>The same, and says beside the results that a file was replaced.</summary>
    /// <param name="streams">Where it is said.</param>
    /// <param name="bytes">What is written.</param>
    /// <param name="stop">Stops it.</param>
    /// <param name="isAlwaysSaid">Whether a file that is new is said to be written, too.</param>
    public void WriteAndSay(Streams streams, byte[] bytes, CancellationToken stop, bool isAlwaysSaid = false)
    {
        if (Write(streams, bytes, stop))
        {
            streams.Remarks.WriteLine($"heaveline: {Said}: a file of this name was there; it is replaced.");
        }
        else if (isAlwaysSaid && !IsThrough)
        {
            streams.Remarks.WriteLine($"heaveline: {Said}: written.");
        }
    }

    /// <summary>Why it cannot lie where it is to be written, where it names another file by its name alone; null where it can.</summary>
    /// <param name="main">The file that it names.</param>
    public string? Astray(string main) => IsThrough || string.IsNullOrWhiteSpace(Name) || Folder(Real(Name)) == Folder(Real(main)) ? null
        : $"{Said}: it speaks of '{Path.GetFileName(main)}' and must lie in its folder, '{Folder(main)}'.";

    private static string Folder(string path) => Path.GetDirectoryName(path) is { Length: > 0 } folder ? folder : ".";
}
