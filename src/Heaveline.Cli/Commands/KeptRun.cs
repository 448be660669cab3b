using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Files.Keeping;
using Heaveline.Pieces;

namespace Heaveline.Cli.Commands;

/// <summary>A study whose pieces are kept in a folder while they come, and gone on with from there.</summary>
internal sealed class KeptRun : IPieceRun
{
    private readonly Streams streams;
    private readonly PieceFile file;

    private KeptRun(Streams streams, PieceFile file) => (this.streams, this.file) = (streams, file);

    /// <summary>Where pieces are kept.</summary>
    public static Option<string?> Keep() => new("--kept-in")
    {
        Description =
            "Keep what is worked out in FOLDER/.heaveline/studies while it comes, so that a run that was stopped, or killed, is gone on with.",
        HelpName = "FOLDER",
    };

    /// <summary>Whether those of before are taken up.</summary>
    public static Option<bool> Resume() => new("--resume")
    {
        Description = "Go on from what --kept-in has kept of this study: the same texts, choices and seed, whatever their files are called.",
    };

    /// <summary>Opens the file of a study.</summary>
    /// <param name="streams">Where is said what was kept.</param>
    /// <param name="folder">What --kept-in names.</param>
    /// <param name="resumes">Whether --resume was given.</param>
    /// <param name="study">The study.</param>
    public static KeptRun Open(Streams streams, string folder, bool resumes, StudyTexts study)
    {
        if (!Directory.Exists(folder))
        {
            throw new Stopped($"heaveline: --kept-in {folder}: there is no such folder. Make it, or name another one.", ExitCode.Refused);
        }

        var path = PieceFile.In(folder, study.Hash);
        var isThere = File.Exists(path);
        if (resumes && !isThere && Others(path) is { Length: > 0 } others)
        {
            throw new Stopped(
                $"heaveline: --resume: nothing is kept in '{Path.GetDirectoryName(path)}' of this study, {study.Hash}; kept there: "
                + $"{string.Join(", ", others)}. A study is known by the texts of its files, its choices and its seed: give those of the kept one, "
                + "or leave --resume out and begin this one.",
                ExitCode.Refused);
        }

        var file = Made(folder, path, study.Hash);
        if (!resumes && file.Before > 0)
        {
            file.Dispose();
            throw new Stopped(
                $"heaveline: --kept-in {folder}: {file.Before} {Pieces(file.Before)} of this study {(file.Before == 1 ? "is" : "are")} kept in "
                + $"'{path}' already: give --resume to go on from there, or delete that file.",
                ExitCode.Refused);
        }

        // Whoever stops it has the best so far, and that takes some more driving; a second request ends it at once.
        streams.Grace = TimeSpan.FromMinutes(1);
        streams.StoppedWords = $"heaveline: stopped by you; what was worked out is kept in '{path}', and --resume goes on from it.";
        return new KeptRun(streams, file);
    }

    /// <inheritdoc/>
    public int PiecesAtOnce => 0;

    /// <inheritdoc/>
    public IPieceDoer Through(IPieceDoer doer) => new KeptPieces(doer, file, why => streams.Remarks.WriteLine(
        $"heaveline: {FileTrouble.Words(why)} Nothing more is kept from here on; the study goes on to its end."));

    /// <summary>Lets go the answers to pieces that are not to be trusted.</summary>
    public void Withdraw(IReadOnlyList<byte[]> pieces) => file.Withdraw(pieces);

    /// <inheritdoc/>
    public void Say()
    {
        // The answer is worked out and is not held back for it.
        streams.Remarks.WriteLine(Lost() is { } why
            ? $"heaveline: not all is kept in '{file.Path}': {why} --resume does anew what is missing there."
            : $"heaveline: kept in '{file.Path}': {(file.Before > 0 ? $"{file.Before} {Pieces(file.Before)} of before, " : "")}"
                + $"{file.Count - file.Before} {(file.Before > 0 ? "more" : Pieces(file.Count))}.");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (Lost() is { } why)
        {
            streams.StoppedWords = $"heaveline: stopped by you; not all that was worked out is kept in '{file.Path}': {why}";
        }

        file.Dispose();
    }

    private static PieceFile Made(string folder, string path, string study)
    {
        try
        {
            return PieceFile.Open(path, study, Release.Build);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            // Before anything is worked out: hours of work whose pieces are lost are not what was asked for.
            throw new Stopped(
                $"heaveline: --kept-in {folder}: nothing can be kept there. {FileTrouble.Words(trouble)} Name a folder in which you may write, or "
                + "leave --kept-in out.",
                ExitCode.Refused);
        }
    }

    private string? Lost()
    {
        try
        {
            file.Flush();
            return null;
        }
        catch (IOException failure)
        {
            return FileTrouble.Words(failure.InnerException ?? failure);
        }
    }

    private static string Pieces(int count) => count == 1 ? "piece" : "pieces";

    private static string[] Others(string path) => Path.GetDirectoryName(path) is { } folder && Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder, "*" + PieceFile.Ending).Order(StringComparer.Ordinal).Select(PieceFile.StudyOf).OfType<string>()]
        : [];
}
