using System.Buffers.Binary;
using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Heaveline.Cars;
using Heaveline.Files.Garages;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;
using Microsoft.Data.Sqlite;

namespace Heaveline.Finding;

/// <summary>
/// What the files of a garage say, kept in a database beside them so that hundreds are found at once. The files are the truth: the index is brought
/// up to date from them before anything is looked for, may be deleted at any time, and is made anew where it is damaged or of another version.
/// </summary>
public sealed class GarageIndex : IDisposable
{
    /// <summary>The folder of the garage that it lies in.</summary>
    public const string Folder = ".heaveline";

    /// <summary>Most files that are indexed.</summary>
    public const int MostFiles = 20_000;

    // Its form.
    private const string Form = "2";

    // A file that was written in the very instant in which it was indexed may be written again without another time.
    private static readonly TimeSpan Settled = TimeSpan.FromSeconds(2.0);

    // Of another form, of other numbers or of another version of what computes them it is made anew.
    private static readonly string Version = Hash([Form, Computing, .. Numbers.Select(measure => measure.Key)]);

    private readonly Garage garage;
    private readonly TimeProvider time;
    private readonly SqliteConnection connection;

    private GarageIndex(Garage garage, TimeProvider time, SqliteConnection connection, string obstacle)
    {
        this.garage = garage;
        this.time = time;
        this.connection = connection;
        Obstacle = obstacle;
    }

    /// <summary>Whether it is kept for the next time; not in a folder that cannot be written.</summary>
    public bool IsKept => Obstacle.Length == 0;

    /// <summary>What stands in the way of its being kept, a clause; empty where it is kept.</summary>
    public string Obstacle { get; }

    /// <summary>Numbers that cars are found by: all of the standing car.</summary>
    public static IReadOnlyList<Measure<CarAtRest>> Numbers => RestCatalogue.All;

    /// <summary>Opens a garage's index, or makes one.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="time">The clock; the system's when left out.</param>
    /// <param name="patience">For how many seconds it waits for another program that writes it.</param>
    public static GarageIndex Open(Garage garage, TimeProvider? time = null, int patience = 10)
    {
        ArgumentNullException.ThrowIfNull(garage);
        time ??= TimeProvider.System;
        var file = FileOf(garage);
        if (IndexFolder.Obstacle(file) is { Length: > 0 } obstacle)
        {
            return InMemory(garage, obstacle, time);
        }

        var source = new SqliteConnectionStringBuilder { DataSource = file, Pooling = false, DefaultTimeout = patience }.ToString();
        return new GarageIndex(garage, time, Made(source), "");
    }

    /// <summary>An index that nothing is kept of.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="obstacle">Why it is not kept, a clause.</param>
    /// <param name="time">The clock; the system's when left out.</param>
    public static GarageIndex InMemory(Garage garage, string obstacle, TimeProvider? time = null)
    {
        ArgumentNullException.ThrowIfNull(garage);
        return new GarageIndex(garage, time ?? TimeProvider.System, Made("Data Source=:memory:"), obstacle);
    }

    /// <summary>Where a garage's index lies.</summary>
    internal static string FileOf(Garage garage) => Path.Combine(garage.Folder, Folder, "index.db");

    /// <summary>Reads what has changed since the last time, and what stands on it.</summary>
    /// <param name="progress">Told the share done (–); null for nobody.</param>
    /// <param name="cancellation">Stops the work; the index stays as it was.</param>
    public IndexUpdate Update(IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        using var transaction = connection.BeginTransaction();
        var known = Known(transaction);
        var there = garage.Names().Take(MostFiles).ToDictionary(name => name, Look, StringComparer.Ordinal);
        var gone = known.Keys.Except(there.Keys).ToList();
        var changed = there.Where(file => !IsAsKnown(known.GetValueOrDefault(file.Key), file.Value)).Select(file => file.Key).ToHashSet();
        changed.UnionWith(StandingOn([.. changed, .. gone], known));
        changed.IntersectWith(there.Keys);
        foreach (var name in gone.Concat(changed))
        {
            Forget(transaction, name);
        }

        var done = 0;
        foreach (var name in changed)
        {
            cancellation.ThrowIfCancellationRequested();
            Keep(transaction, name, there[name]);
            progress?.Report(++done / (double)changed.Count);
        }

        transaction.Commit();
        return new IndexUpdate(changed.Count, there.Count - changed.Count, gone.Count);
    }

    /// <summary>The files that are found, the likeliest first where words are looked for, else by name.</summary>
    /// <param name="query">What is looked for.</param>
    public IReadOnlyList<FoundFile> Find(FindQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        using var command = connection.CreateCommand();
        var (tests, joined) = (new List<string>(), query.Words.Count > 0);
        if (joined)
        {
            tests.Add("words MATCH $words");
            command.Parameters.AddWithValue("$words", string.Join(' ', query.Words.Select(Quoted)));
        }

        if (query.Kinds.Count > 0)
        {
            tests.Add($"files.kind IN ({string.Join(", ", query.Kinds.Select((_, i) => $"$kind{i}"))})");
            foreach (var (i, kind) in query.Kinds.Index())
            {
                command.Parameters.AddWithValue($"$kind{i}", (int)kind);
            }
        }

        command.CommandText =
            $"""
            SELECT files.id, files.name, files.kind, files.title, of, problem, {(joined ? "snippet(words, -1, '', '', ' … ', 12)" : "''")}
            FROM files{(joined ? " JOIN words ON words.rowid = files.id" : "")}
            {(tests.Count > 0 ? "WHERE " + string.Join(" AND ", tests) : "")}
            ORDER BY {(joined ? "bm25(words, 6.0, 6.0, 3.0, 1.0), " : "")}files.name
            """;
        var found = new List<(long Id, FoundFile File)>();
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            found.Add((rows.GetInt64(0), new FoundFile
            {
                Name = rows.GetString(1),
                Kind = (GarageKind)rows.GetInt32(2),
                Title = rows.GetString(3),
                Of = rows.GetString(4),
                Problem = rows.GetString(5),
                Place = string.Join(' ', rows.GetString(6).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
                Numbers = [],
            }));
        }

        var numbers = NumbersOf([.. found.Select(one => one.Id)]);
        return
        [
            .. found.Select(one => one.File with { Numbers = [.. numbers[one.Id]] })
                .Where(file => query.Bounds.Count == 0 || file.Numbers.GroupBy(number => number.Load).Any(load => KeepsAll(query.Bounds, load))),
        ];
    }

    /// <inheritdoc/>
    public void Dispose() => connection.Dispose();

    private static SqliteConnection Made(string source)
    {
        var connection = new SqliteConnection(source);
        try
        {
            connection.Open();
            if (Read(connection, "PRAGMA user_version") != Version)
            {
                Run(connection,
                    $"""
                    DROP TABLE IF EXISTS files; DROP TABLE IF EXISTS numbers; DROP TABLE IF EXISTS words;
                    CREATE TABLE files (
                        id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, kind INTEGER NOT NULL, title TEXT NOT NULL, of TEXT NOT NULL,
                        problem TEXT NOT NULL, length INTEGER NOT NULL, written INTEGER NOT NULL, looked INTEGER NOT NULL);
                    CREATE TABLE numbers (file INTEGER NOT NULL, load TEXT NOT NULL, key TEXT NOT NULL, value REAL NOT NULL);
                    CREATE INDEX numbers_of_file ON numbers (file);
                    CREATE VIRTUAL TABLE words USING fts5 (name, title, kind, text, tokenize = "unicode61 remove_diacritics 2");
                    PRAGMA user_version = {Version};
                    """);
            }

            return connection;
        }
        catch (SqliteException)
        {
            connection.Dispose();
            throw;
        }
    }

    private static void Run(SqliteConnection connection, string text)
    {
        using var command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    private static string Read(SqliteConnection connection, string text)
    {
        using var command = connection.CreateCommand();
        command.CommandText = text;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }

    // A word as the beginning of one; what it holds is no syntax.
    private static string Quoted(string word) => $"\"{word.Replace("\"", "\"\"", StringComparison.Ordinal)}\"*";

    // As the bounds say it, not the database: what is compared is what is printed.
    private static bool KeepsAll(IReadOnlyList<MeasureBound> bounds, IEnumerable<IndexedNumber> load) =>
        bounds.All(bound => load.Any(number => number.Key == bound.Measure.Key && bound.Holds(number.Value)));

    private static string Computing =>
        typeof(CarAtRest).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";

    // A whole number above 0: all that a database says of its version.
    private static string Hash(IEnumerable<string> words) =>
        ((BinaryPrimitives.ReadInt32LittleEndian(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', words)))) & int.MaxValue) | 1)
        .ToString(CultureInfo.InvariantCulture);

    private static bool IsAsKnown(KnownFile? known, (long Length, DateTime Written) now) =>
        known is not null && known.Length == now.Length && known.Written == now.Written && known.Written < known.Looked - Settled;

    // Variants of what has changed, variants of those, and drives and sheets whose car it is.
    private static HashSet<string> StandingOn(HashSet<string> changed, Dictionary<string, KnownFile> known)
    {
        var all = new HashSet<string>();
        for (var next = changed; next.Count > 0;)
        {
            next = [.. known.Where(file => next.Contains(file.Value.Of) && all.Add(file.Key)).Select(file => file.Key)];
        }

        return all;
    }

    private (long Length, DateTime Written) Look(string name)
    {
        var file = new FileInfo(Path.Combine(garage.Folder, name));
        return file.Exists ? (file.Length, file.LastWriteTimeUtc) : (-1, default);
    }

    private Dictionary<string, KnownFile> Known(SqliteTransaction transaction)
    {
        using var command = connection.CreateCommand();
        (command.Transaction, command.CommandText) = (transaction, "SELECT name, of, length, written, looked FROM files");
        using var rows = command.ExecuteReader();
        var known = new Dictionary<string, KnownFile>(StringComparer.Ordinal);
        while (rows.Read())
        {
            known[rows.GetString(0)] = new KnownFile(rows.GetString(1), rows.GetInt64(2), Utc(rows.GetInt64(3)), Utc(rows.GetInt64(4)));
        }

        return known;
    }

    private static DateTime Utc(long ticks) => new(ticks, DateTimeKind.Utc);

    private void Forget(SqliteTransaction transaction, string name)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText =
            """
            DELETE FROM words WHERE rowid = (SELECT id FROM files WHERE name = $name);
            DELETE FROM numbers WHERE file = (SELECT id FROM files WHERE name = $name);
            DELETE FROM files WHERE name = $name;
            """;
        command.Parameters.AddWithValue("$name", name);
        command.ExecuteNonQuery();
    }

    private void Keep(SqliteTransaction transaction, string name, (long Length, DateTime Written) file)
    {
        var looked = time.GetUtcNow().UtcDateTime;
        var text = garage.Read(name);
        var entry = GarageReading.Entry(garage, text);
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText =
            """
            INSERT INTO files (name, kind, title, of, problem, length, written, looked)
            VALUES ($name, $kind, $title, $of, $problem, $length, $written, $looked);
            INSERT INTO words (rowid, name, title, kind, text) VALUES (last_insert_rowid(), $name, $title, $words, $text);
            SELECT id FROM files WHERE name = $name;
            """;
        command.Parameters.AddWithValue("$name", name);
        command.Parameters.AddWithValue("$kind", (int)entry.Kind);
        command.Parameters.AddWithValue("$title", entry.Title);
        command.Parameters.AddWithValue("$of", entry.Base ?? "");
        command.Parameters.AddWithValue("$problem", entry.Problem ?? "");
        command.Parameters.AddWithValue("$length", file.Length);
        command.Parameters.AddWithValue("$written", file.Written.Ticks);
        command.Parameters.AddWithValue("$looked", looked.Ticks);
        command.Parameters.AddWithValue("$words", GarageKindWords.Of(entry.Kind));
        command.Parameters.AddWithValue("$text", text.Text ?? "");
        var id = (long)command.ExecuteScalar()!;
        if (entry is { Kind: GarageKind.Car or GarageKind.Variant, Refusals: 0 } && garage.Car(name, text.Text!).Value is { } car)
        {
            KeepNumbers(transaction, id, car);
        }
    }

    private void KeepNumbers(SqliteTransaction transaction, long id, Car car)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "INSERT INTO numbers (file, load, key, value) VALUES ($file, $load, $key, $value)";
        command.Parameters.AddWithValue("$file", id);
        var load = command.Parameters.Add("$load", SqliteType.Text);
        var key = command.Parameters.Add("$key", SqliteType.Text);
        var value = command.Parameters.Add("$value", SqliteType.Real);
        foreach (var state in car.LoadStates.Prepend(LoadState.Reference).DistinctBy(state => state.Name))
        {
            if (AtRest(car, state) is not { } rest)
            {
                continue;
            }

            foreach (var measure in Numbers)
            {
                if (measure.Of(rest) is var number && double.IsFinite(number))
                {
                    (load.Value, key.Value, value.Value) = (state.Name, measure.Key, number);
                    command.ExecuteNonQuery();
                }
            }
        }
    }

    // A load under which the car cannot stand has no numbers; check and describe say why.
    private static CarAtRest? AtRest(Car car, LoadState load)
    {
        try
        {
            return new CarAtRest(RideModel.Of(car, load));
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    private ILookup<long, IndexedNumber> NumbersOf(IReadOnlyList<long> files)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT file, load, key, value FROM numbers WHERE file IN (SELECT value FROM json_each($files)) ORDER BY rowid";
        command.Parameters.AddWithValue("$files", $"[{string.Join(',', files)}]");
        using var rows = command.ExecuteReader();
        var numbers = new List<(long File, IndexedNumber Number)>();
        while (rows.Read())
        {
            numbers.Add((rows.GetInt64(0), new IndexedNumber(rows.GetString(1), rows.GetString(2), rows.GetDouble(3))));
        }

        return numbers.ToLookup(one => one.File, one => one.Number);
    }

    private sealed record KnownFile(string Of, long Length, DateTime Written, DateTime Looked);
}
