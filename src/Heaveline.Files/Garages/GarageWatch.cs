namespace Heaveline.Files.Garages;

/// <summary>
/// Tells which files of a garage have another content than before, whoever has written them: an editor, another program, another page. The system's
/// own word is taken where it comes; where it does not, as on drives of a network, the files are looked at every two seconds. A file is told of when
/// it has been left alone for 0.3 s, so that one half written is not. Nothing is watched while nobody listens.
/// </summary>
/// <param name="folder">The garage's folder.</param>
public sealed class GarageWatch(string folder) : IDisposable
{
    /// <summary>Most files that are watched, the first by their paths.</summary>
    public const int MostFiles = 2000;

    /// <summary>How long a file must be left alone before it is told of.</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(300);

    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);

    // Two writings within a tick of the file system's clock can look alike: as long as a file is younger it is read again.
    private static readonly TimeSpan Young = TimeSpan.FromSeconds(2.5);

    private readonly Lock gate = new();
    private readonly List<Action<IReadOnlyCollection<string>>> listeners = [];
    private readonly HashSet<string> touched = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim signal = new(0, 1);
    private CancellationTokenSource? running;

    /// <summary>Whether the system's own word is taken; tests of the other way say no.</summary>
    internal bool AsksSystem { get; init; } = true;

    /// <summary>Listens from now on.</summary>
    /// <param name="changed">Called with the names inside the garage, from any thread.</param>
    /// <returns>To be disposed of by whoever listens no more.</returns>
    public IDisposable Listen(Action<IReadOnlyCollection<string>> changed)
    {
        ArgumentNullException.ThrowIfNull(changed);
        lock (gate)
        {
            listeners.Add(changed);
            if (running is null)
            {
                var known = Look([]).ToDictionary(look => look.Key, look => Read(look.Key, look.Value) ?? look.Value, StringComparer.Ordinal);
                running = new CancellationTokenSource();
                var stop = running.Token;
                _ = Task.Run(() => Run(known, stop), stop);
            }
        }

        return new Listening(this, changed);
    }

    /// <summary>Watches no more.</summary>
    public void Dispose()
    {
        lock (gate)
        {
            listeners.Clear();
            Stop();
        }
    }

    private void Stop()
    {
        var former = running;
        running = null;
        former?.Cancel();
        former?.Dispose();
    }

    private async Task Run(Dictionary<string, WatchedFile> known, CancellationToken stop)
    {
        try
        {
            using var watcher = AsksSystem ? Watcher() : null;
            while (true)
            {
                await signal.WaitAsync(Pause, stop);
                if (await Round(known, stop) is { Count: > 0 } changed)
                {
                    Tell(changed, stop);
                }
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Nobody listens any more.
        }
    }

    // One look, a pause, another look: what is the same in both, and has another content than before, has changed.
    private async Task<IReadOnlyCollection<string>> Round(Dictionary<string, WatchedFile> known, CancellationToken stop)
    {
        var first = Look(known);
        var asked = Touched();
        asked.UnionWith(known.Keys.Union(first.Keys).Where(name => known.GetValueOrDefault(name) is var old
            && (!WatchedFile.LookAlike(old, first.GetValueOrDefault(name)) || old is { IsYoung: true })));
        if (asked.Count == 0)
        {
            return [];
        }

        await Task.Delay(Quiet, stop);
        var second = Look(known);
        var again = Touched();
        var changed = new List<string>();
        foreach (var name in asked)
        {
            var (before, now) = (known.GetValueOrDefault(name), second.GetValueOrDefault(name));
            var read = now is null ? null : Read(name, now);
            if (again.Contains(name) || !WatchedFile.LookAlike(first.GetValueOrDefault(name), now) || (read is null && now is not null))
            {
                // It is still being written.
                Touch(name);
                continue;
            }

            if (before?.Content != read?.Content)
            {
                changed.Add(name);
            }

            if (read is null)
            {
                known.Remove(name);
            }
            else
            {
                known[name] = read;
            }
        }

        again.ToList().ForEach(Touch);
        return changed;
    }

    private void Tell(IReadOnlyCollection<string> changed, CancellationToken stop)
    {
        List<Action<IReadOnlyCollection<string>>> told;
        lock (gate)
        {
            stop.ThrowIfCancellationRequested();
            told = [.. listeners];
        }

        told.ForEach(listener => listener(changed));
    }

    private HashSet<string> Touched()
    {
        lock (gate)
        {
            var names = touched.ToHashSet(StringComparer.Ordinal);
            touched.Clear();
            return names;
        }
    }

    private void Touch(string name)
    {
        lock (gate)
        {
            if (touched.Count < MostFiles)
            {
                touched.Add(name);
            }

            Wake();
        }
    }

    private void Wake()
    {
        lock (gate)
        {
            if (signal.CurrentCount == 0)
            {
                signal.Release();
            }
        }
    }

    // Null where the system has no room for another one: then the files are looked at, no more.
    private FileSystemWatcher? Watcher()
    {
        FileSystemWatcher? watcher = null;
        try
        {
            watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = true };
            void Heard(object sender, FileSystemEventArgs e)
            {
                if (NameOf(e.FullPath) is var name && IsOurs(name))
                {
                    Touch(name);
                }
            }

            watcher.Changed += Heard;
            watcher.Created += Heard;
            watcher.Deleted += Heard;
            watcher.Renamed += Heard;
            watcher.Error += (_, _) => Wake();
            watcher.EnableRaisingEvents = true;
            return watcher;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            watcher?.Dispose();
            return null;
        }
    }

    private Dictionary<string, WatchedFile> Look(Dictionary<string, WatchedFile> known)
    {
        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = Garage.DeepestFolder,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
        try
        {
            return new DirectoryInfo(folder).EnumerateFiles("*", options)
                .Select(file => (Name: NameOf(file.FullName), file)).Where(one => IsOurs(one.Name)).OrderBy(one => one.Name, StringComparer.Ordinal)
                .Take(MostFiles).ToDictionary(one => one.Name, one => WatchedFile.Of(one.file), StringComparer.Ordinal);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A file went while it was looked at, or the folder is out of reach for a moment: as before, until the next look.
            return new(known, StringComparer.Ordinal);
        }
    }

    // With the content, of a text as it is read, of measured data by its look; null when it cannot be read just now.
    private WatchedFile? Read(string name, WatchedFile look)
    {
        try
        {
            return GarageNames.Problem(name) is null && look.Length <= Yaml.YamlTree.Longest
                ? look.With(Stamp.Of(Bounded.Read(Path.Combine(folder, name), Yaml.YamlTree.Longest)).Sha256, Young)
                : look.With($"{look.Length} {look.Written}", TimeSpan.Zero);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return File.Exists(Path.Combine(folder, name)) && e is UnauthorizedAccessException ? look.With("unreadable", TimeSpan.Zero) : null;
        }
    }

    private static bool IsOurs(string name) =>
        !name.Split('/').Any(part => part.StartsWith('.')) && !name.StartsWith(GarageNames.Earlier + "/", StringComparison.OrdinalIgnoreCase);

    private string NameOf(string path) => Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '/');

    private sealed class Listening(GarageWatch watch, Action<IReadOnlyCollection<string>> changed) : IDisposable
    {
        public void Dispose()
        {
            lock (watch.gate)
            {
                if (watch.listeners.Remove(changed) && watch.listeners.Count == 0)
                {
                    watch.Stop();
                }
            }
        }
    }
}
