using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>Logs of a drive: files, a folder or an archive in, one log out, or every refusal by name. Nothing has to be set up.</summary>
public static class LogFile
{
    /// <summary>Reads what paths lead to.</summary>
    /// <param name="paths">Files, folders, archives; their order does not matter.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static LogReading Load(IReadOnlyList<string> paths, CancellationToken stop = default) => Load(paths, [], stop);

    /// <summary>The same with decisions of the reading that are taken otherwise.</summary>
    /// <param name="paths">Files, folders, archives.</param>
    /// <param name="overrulings">What is taken otherwise.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static LogReading Load(IReadOnlyList<string> paths, IReadOnlyList<Overruling> overrulings, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(overrulings);
        return Load(paths, folder: null, stop, overrulings);
    }

    /// <summary>The same for files of one folder, which are then called by their names in it.</summary>
    /// <param name="paths">Files.</param>
    /// <param name="folder">The folder; null: files are called by their paths.</param>
    /// <param name="stop">Stops it.</param>
    /// <param name="overrulings">What is taken otherwise; null: nothing.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal static LogReading Load(
        IReadOnlyList<string> paths, string? folder, CancellationToken stop, IReadOnlyList<Overruling>? overrulings = null)
    {
        ArgumentNullException.ThrowIfNull(paths);
        var sources = new LogSources(folder, stop);
        foreach (var path in paths.Distinct(StringComparer.Ordinal))
        {
            sources.Add(path);
        }

        var reading = sources.Refusals.Count > 0 ? LogReading.Refused(sources.Refusals) : Read(sources.Sources, overrulings ?? [], stop);
        return reading with { Paths = [.. sources.Paths] };
    }

    /// <summary>Reads texts that are in memory already.</summary>
    /// <param name="texts">Names and bytes.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static LogReading Read(IReadOnlyList<(string Name, byte[] Bytes)> texts, CancellationToken stop = default) => Read(texts, [], stop);

    /// <summary>The same with decisions of the reading that are taken otherwise.</summary>
    /// <param name="texts">Names and bytes.</param>
    /// <param name="overrulings">What is taken otherwise.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static LogReading Read(
        IReadOnlyList<(string Name, byte[] Bytes)> texts, IReadOnlyList<Overruling> overrulings, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(texts);
        ArgumentNullException.ThrowIfNull(overrulings);
        return Read([.. texts.Select(t => new LogSource(t.Name, t.Bytes))], overrulings, stop);
    }

    private static LogReading Read(IReadOnlyList<LogSource> sources, IReadOnlyList<Overruling> overrulings, CancellationToken stop)
    {
        // A wish that fits no file would otherwise be passed over.
        if (OverruledColumns.Homeless([.. sources.Select(s => s.Name)], overrulings).ToList() is { Count: > 0 } homeless)
        {
            return LogReading.Refused(homeless);
        }

        var (once, again) = Once([.. sources.OrderBy(s => s.Name, StringComparer.Ordinal)]);
        var tables = new List<LogTable>();
        var refusals = new List<LogRefusal>();
        foreach (var source in once)
        {
            if (LogTable.Read(source, new(source.Name, once.Count == 1, overrulings), overrulings, stop, out var refusal) is { } table)
            {
                tables.Add(table);
            }
            else
            {
                refusals.Add(refusal!);
            }
        }

        // Beside a log that can be read, a note or a list of settings is passed over.
        var joining = new LogJoining(tables, overrulings, stop);
        var log = tables.Count > 0 ? joining.Joined() : null;
        if (log is not null)
        {
            return new LogReading
            {
                Log = log with
                {
                    Overrulings = [.. overrulings],
                    Story = [.. log.Story, .. again, .. refusals.Select(r => new StoryLine("left-out", $"{r.File} is left out: {r.Message}", true))],
                },
            };
        }

        refusals.AddRange(joining.Refusals);
        return LogReading.Refused(refusals.Count > 0 ? refusals : [new LogRefusal("log", "no file is named.", "Give the files of a drive.")]);
    }

    // One file under two names is one file.
    private static (List<LogSource> Once, List<StoryLine> Again) Once(LogSource[] sources)
    {
        var (once, again) = (new List<LogSource>(), new List<StoryLine>());
        foreach (var source in sources)
        {
            if (source.Bytes.Length > 0 && once.Find(s => s.Bytes.AsSpan().SequenceEqual(source.Bytes)) is { } same)
            {
                again.Add(new StoryLine("left-out", $"{source.Name} is left out: it is {same.Name} once more, byte for byte.", true));
            }
            else
            {
                once.Add(source);
            }
        }

        return (once, again);
    }
}
