using Heaveline.Files.Garages;
using Microsoft.Data.Sqlite;

namespace Heaveline.Finding;

/// <summary>
/// Looks for files in a garage, whatever has become of its index: a damaged one is made anew once, and where none can be had the files are looked
/// at without one.
/// </summary>
public static class GarageFinder
{
    // SQLITE_ERROR of words that are our own is a table that is not there; SQLITE_CORRUPT and SQLITE_NOTADB say so themselves.
    private static readonly int[] Damaged = [1, 11, 26];

    private static readonly int[] Locked = [5, 6];

    /// <summary>Whether a folder holds any file of a garage, at its top or one level below, or a drive where drives lie.</summary>
    /// <param name="garage">The garage.</param>
    public static bool IsAny(Garage garage)
    {
        ArgumentNullException.ThrowIfNull(garage);
        return garage.Names().Where(IsNear).Any(name => GarageReading.Entry(garage, name).Kind != GarageKind.Unknown);
    }

    /// <summary>The files that are found.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="query">What is looked for.</param>
    /// <param name="time">The clock; the system's when left out.</param>
    /// <param name="patience">For how many seconds it waits for another program that writes the index.</param>
    /// <param name="cancellation">Stops it.</param>
    public static GarageFindings Of(
        Garage garage, FindQuery query, TimeProvider? time = null, int patience = 10, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(query);
        var file = $"{GarageIndex.Folder}/index.db";
        try
        {
            return Asked(() => GarageIndex.Open(garage, time, patience), query, "", cancellation);
        }
        catch (SqliteException damaged) when (Damaged.Contains(damaged.SqliteErrorCode))
        {
            // Nothing is lost with it.
            return Anew($"'{file}' was damaged and is made anew.");
        }
        catch (SqliteException other)
        {
            return Without(other);
        }

        GarageFindings Anew(string remark)
        {
            try
            {
                File.Delete(GarageIndex.FileOf(garage));
                return Asked(() => GarageIndex.Open(garage, time, patience), query, remark, cancellation);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return InMemory($"'{file}' is damaged and cannot be deleted");
            }
            catch (SqliteException other)
            {
                return Without(other);
            }
        }

        GarageFindings Without(SqliteException why) => InMemory(Locked.Contains(why.SqliteErrorCode)
            ? $"another program is writing '{file}'"
            : $"'{file}' cannot be used ({why.Message})");

        GarageFindings InMemory(string obstacle) => Asked(() => GarageIndex.InMemory(garage, obstacle, time), query, "", cancellation);
    }

    private static GarageFindings Asked(Func<GarageIndex> open, FindQuery query, string remark, CancellationToken cancellation)
    {
        using var index = open();
        var update = index.Update(cancellation: cancellation);
        return new(index.Find(query), update, index.IsKept ? remark : $"{index.Obstacle}: the files are read anew, and nothing is kept of it.");
    }

    // Not every file below a folder that is a garage by mistake is read.
    private static bool IsNear(string name) => name.Split('/') is [_] or [_, _] or [DriveFolders.Folder, _, _];
}
