using System.Globalization;

namespace Heaveline.Files.Garages;

/// <summary>The earlier versions of a garage's files: <c>earlier/NAME.yyyy-MM-ddTHHmmssfff.yaml</c>, folders as in the garage.</summary>
/// <param name="folder">The garage's folder.</param>
/// <param name="most">How many versions of one file are kept.</param>
internal sealed class EarlierVersions(string folder, int most)
{
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
        var place = Place(name);
        if (!IsInside(place))
        {
            throw new IOException($"the folder {GarageNames.Earlier} is a link that leads out of the garage.");
        }

        Directory.CreateDirectory(place);
        var known = Of(name);
        var until = new DateTime(now.Ticks - (now.Ticks % Step.Ticks), DateTimeKind.Utc);
        if (known.Count > 0 && known[0].Until >= until)
        {
            until = known[0].Until < Last ? known[0].Until + Step : Last;
        }

        var step = Step;
        while (!WholeFile.Write(PathOf(name, until), stream => stream.Write(bytes), () => true, replaces: false))
        {
            step = until == Last ? -Step : step;
            until += step;
        }

        var old = known.Skip(most - 1).ToList();
        foreach (var version in old)
        {
            File.Delete(PathOf(name, version.Until));
        }

        return (new EarlierVersion(name, until, bytes.Length), old.Count);
    }

    /// <summary>Takes away what killed programs left beside the versions of a file.</summary>
    public void Sweep(string name, DateTime now)
    {
        if (Place(name) is var place && IsInside(place))
        {
            PartialFile.Sweep(place, GarageFormat.Has, now);
        }
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
