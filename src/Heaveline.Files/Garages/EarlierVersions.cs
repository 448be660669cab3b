using System.Globalization;
using System.Text;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Garages;

/// <summary>The earlier versions of a garage's files: <c>earlier/NAME.yyyy-MM-ddTHHmmssfff.yaml</c>, folders as in the garage.</summary>
/// <param name="folder">The garage's folder.</param>
/// <param name="most">How many versions of one file are kept.</param>
internal sealed class EarlierVersions(string folder, int most)
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private const string Format = "yyyy-MM-dd'T'HHmmssfff";
    private static readonly TimeSpan Step = TimeSpan.FromMilliseconds(1);

    // The last millisecond that a name can hold.
    private static readonly DateTime Last = new(DateTime.MaxValue.Ticks - (DateTime.MaxValue.Ticks % Step.Ticks), DateTimeKind.Utc);

    /// <summary>The versions of a file, the newest first.</summary>
    public IReadOnlyList<EarlierVersion> Of(string name)
    {
        var place = new DirectoryInfo(Place(name));
        if (!place.Exists || !IsInside(place.FullName))
        {
            return [];
        }

        var (stem, extension) = Parts(name);
        return [.. place.EnumerateFiles()
            .Where(file => file.LinkTarget is null)
            .Select(file => (file, Until: Time(file.Name, stem, extension)))
            .Where(pair => pair.Until is not null)
            .Select(pair => new EarlierVersion(name, pair.Until!.Value, pair.file.Length))
            .OrderByDescending(version => version.Until)];
    }

    /// <summary>Where a version lies.</summary>
    public string PathOf(string name, DateTime until)
    {
        var (stem, extension) = Parts(name);
        return Path.Combine(Place(name), $"{stem}.{until.ToString(Format, CultureInfo.InvariantCulture)}{extension}");
    }

    /// <summary>Keeps a version, and drops the oldest ones beyond the number that is kept.</summary>
    /// <param name="name">The file.</param>
    /// <param name="bytes">Its content.</param>
    /// <param name="now">
    /// The time, UTC. A clock that was put back does not put the version before older ones: it then takes the next free millisecond; after the last
    /// one of the calendar, the free one before it.
    /// </param>
    /// <returns>The version, and how many were dropped.</returns>
    /// <exception cref="IOException">It cannot be kept.</exception>
    public (EarlierVersion Version, int Dropped) Keep(string name, byte[] bytes, DateTime now)
    {
        MakeRoom(name);
        var known = Of(name);
        var until = After(known, now);
        var step = Step;
        while (!WholeFile.Write(PathOf(name, until), stream => stream.Write(bytes), () => true, replaces: false))
        {
            step = until == Last ? -Step : step;
            until += step;
        }

        return (new EarlierVersion(name, until, bytes.Length), Drop(known));
    }

    /// <summary>
    /// Moves a file itself among its earlier versions, as it is. Where it is not the one that was read, it is moved back; what was written over it
    /// meanwhile, by whomever, is never lost.
    /// </summary>
    /// <param name="name">The file.</param>
    /// <param name="path">Where it lies.</param>
    /// <param name="read">The stamp of what was read.</param>
    /// <param name="now">The time, UTC.</param>
    /// <returns>The version; null where the file is another one, and lies where it lay.</returns>
    /// <exception cref="IOException">It cannot be moved.</exception>
    public EarlierVersion? Take(string name, string path, Stamp read, DateTime now)
    {
        MakeRoom(name);
        var known = Of(name);
        var until = After(known, now);
        var step = until == Last ? -Step : Step;
        while (File.Exists(PathOf(name, until)))
        {
            until += step;
        }

        var kept = PathOf(name, until);
        File.Move(path, kept, overwrite: false);
        var bytes = Bounded.Read(kept, YamlTree.Longest);
        if (Stamp.Of(bytes) != read)
        {
            File.Move(kept, path, overwrite: false);
            return null;
        }

        Drop(known);
        return new EarlierVersion(name, until, bytes.Length);
    }

    /// <summary>Moves a version back to where the file lay, as it is; never over a file that lies there.</summary>
    /// <param name="version">The version.</param>
    /// <param name="path">Where the file lay.</param>
    /// <exception cref="IOException">The version is gone, there is a file, or it cannot be moved.</exception>
    public void Bring(EarlierVersion version, string path) => File.Move(PathOf(version.Name, version.Until), path, overwrite: false);

    /// <summary>Lets the versions of a file follow it to another name. One that is there under that name already stays.</summary>
    /// <param name="name">The former name.</param>
    /// <param name="to">The new one, in the same folder.</param>
    public void Rename(string name, string to)
    {
        foreach (var version in Of(name))
        {
            var there = PathOf(to, version.Until);
            if (!File.Exists(there))
            {
                File.Move(PathOf(name, version.Until), there, overwrite: false);
            }
        }
    }

    /// <summary>The last version of every file that is no longer there, the newest first.</summary>
    public IReadOnlyList<EarlierVersion> OfGone()
    {
        var place = new DirectoryInfo(Path.Combine(folder, GarageNames.Earlier));
        if (!place.Exists || place.LinkTarget is not null)
        {
            return [];
        }

        var options = new EnumerationOptions
        {
            RecurseSubdirectories = true,
            MaxRecursionDepth = Garage.DeepestFolder,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
        return [.. place.EnumerateFiles("*", options)
            .Select(file => Version(Path.GetRelativePath(place.FullName, file.FullName).Replace(Path.DirectorySeparatorChar, '/'), file.Length))
            .OfType<EarlierVersion>()
            .GroupBy(version => version.Name, StringComparer.Ordinal).Select(versions => versions.MaxBy(version => version.Until)!)
            .Where(version => GarageNames.Problem(version.Name) is null && !File.Exists(Path.Combine(folder, version.Name))
                && Directory.Exists(Path.GetDirectoryName(Path.Combine(folder, version.Name))))
            .OrderByDescending(version => version.Until).ThenBy(version => version.Name, StringComparer.Ordinal)];
    }

    /// <summary>
    /// Makes way for a new file: what was taken out of the garage under its name, and is called otherwise, stays listed, and can be put back, under a
    /// free name beside it. Variants that went out with it name it by that.
    /// </summary>
    /// <param name="name">The new file, which is not there yet.</param>
    /// <param name="text">Its text.</param>
    public void MakeWay(string name, string text)
    {
        if (Of(name) is not [var last, ..] || Decoded(Bounded.Read(PathOf(name, last.Until), YamlTree.Longest)) is not { } kept
            || TakenOutFile.Called(name, kept).Title == TakenOutFile.Called(name, text).Title)
        {
            return;
        }

        var (stem, extension) = (Path.ChangeExtension(name, null), Path.GetExtension(name));
        var free = Enumerable.Range(2, int.MaxValue - 2).Select(n => string.Create(CultureInfo.InvariantCulture, $"{stem}-{n}{extension}"))
            .First(one => !File.Exists(Path.Combine(folder, one)) && Of(one).Count == 0);
        foreach (var other in OfGone().Where(one => one.Until == last.Until && one.Name != name))
        {
            var path = PathOf(other.Name, other.Until);
            if (Decoded(Bounded.Read(path, YamlTree.Longest)) is { } variant
                && GarageReference.Renamed(other.Name, variant, name, free) is { } next)
            {
                WholeFile.Write(path, stream => stream.Write(Strict.GetBytes(next)), () => true, replaces: true);
            }
        }

        Rename(name, free);
    }

    private static string? Decoded(byte[] bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            // No text: it names no other file.
            return null;
        }
    }

    /// <summary>Takes away what killed programs left beside the versions of a file.</summary>
    public void Sweep(string name, DateTime now)
    {
        if (Place(name) is var place && IsInside(place))
        {
            PartialFile.Sweep(place, GarageFormat.Has, now);
        }
    }

    private void MakeRoom(string name)
    {
        var place = Place(name);
        if (!IsInside(place))
        {
            throw new IOException($"the folder {GarageNames.Earlier} is a link that leads out of the garage.");
        }

        Directory.CreateDirectory(place);
    }

    // A clock that was put back does not put the version before older ones.
    private static DateTime After(IReadOnlyList<EarlierVersion> known, DateTime now)
    {
        var until = new DateTime(now.Ticks - (now.Ticks % Step.Ticks), DateTimeKind.Utc);
        return known.Count == 0 || known[0].Until < until ? until
            : known[0].Until < Last ? known[0].Until + Step
            : Last;
    }

    // The oldest ones beyond the number that is kept, with one more that has just come.
    private int Drop(IReadOnlyList<EarlierVersion> known)
    {
        var old = known.Skip(most - 1).ToList();
        foreach (var version in old)
        {
            File.Delete(PathOf(version.Name, version.Until));
        }

        return old.Count;
    }

    // The version that a file below the folder is, by its own name; null where it is none.
    private static EarlierVersion? Version(string file, long bytes)
    {
        var extension = Path.GetExtension(file);
        var stem = Path.ChangeExtension(file, null);
        var point = stem.LastIndexOf('.');
        return point > 0 && DateTime.TryParseExact(
            stem[(point + 1)..],
            Format,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out var until)
            ? new EarlierVersion(stem[..point] + extension, until, bytes)
            : null;
    }

    private string Place(string name) => Path.GetDirectoryName(Path.Combine(folder, GarageNames.Earlier, name))!;

    private bool IsInside(string place) =>
        RealPath.Of(place) is { } real && real.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private static (string Stem, string Extension) Parts(string name) => (Path.GetFileNameWithoutExtension(name), Path.GetExtension(name));

    private static DateTime? Time(string file, string stem, string extension)
    {
        if (!file.StartsWith(stem + ".", StringComparison.Ordinal) || !file.EndsWith(extension, StringComparison.Ordinal)
            || file.Length <= stem.Length + 1 + extension.Length)
        {
            return null;
        }

        var time = file[(stem.Length + 1)..^extension.Length];
        return DateTime.TryParseExact(
            time, Format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var until)
            ? until
            : null;
    }
}
