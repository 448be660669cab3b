using System.Text;
using Heaveline.Files.Films;
using Heaveline.Films;
using Heaveline.Studies;

namespace Heaveline.Files.Garages;

/// <summary>A film of an oncoming headlamp in a garage: the film itself, and the brightness that was followed in it, kept beside it.</summary>
public sealed record GarageLamp
{
    private GarageLamp()
    {
    }

    /// <summary>The film's name in the garage.</summary>
    public required string Name { get; init; }

    /// <summary>Where the film lies.</summary>
    public required string Video { get; init; }

    /// <summary>Where the lamp's brightness is kept, or would be.</summary>
    public required string TrackPath { get; init; }

    /// <summary>Whether a lamp was followed in it.</summary>
    public bool HasTrack => File.Exists(TrackPath);

    /// <summary>Reads one.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="video">The film's name there.</param>
    /// <returns>The film; null where there is none of that name, or it lies outside.</returns>
    public static GarageLamp? Of(Garage garage, string video)
    {
        ArgumentNullException.ThrowIfNull(garage);
        ArgumentNullException.ThrowIfNull(video);
        if (GarageNames.Problem(video, FileFormat.Film) is not null)
        {
            return null;
        }

        var from = Path.Combine(garage.Folder, "garage");
        var kept = Path.ChangeExtension(video, null) + "-lamp" + FileFormat.FilmTrack.Endings[0];
        return Confined.Resolve(garage.Folder, from, video) is { Problem: null, Path: var path } && File.Exists(path)
            && Confined.Resolve(garage.Folder, from, kept) is { Problem: null, Path: var track }
            ? new GarageLamp { Name = video, Video = path, TrackPath = track }
            : null;
    }

    /// <summary>The kept brightness of the lamp of a film.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="video">The film's name there.</param>
    public static Found<LampTrack> Find(Garage garage, string video)
    {
        if (Of(garage, video) is not { HasTrack: true } lamp)
        {
            return new Found<LampTrack> { Name = video, Refusal = $"No lamp has been followed in {video} yet.", IsMissing = true };
        }

        var reading = LampFile.Load(lamp.TrackPath);
        return new Found<LampTrack>
        {
            Name = video,
            ShortName = Path.GetFileNameWithoutExtension(video),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"The lamp of {video} is refused: {reading.Refusals[0].Message} {reading.Refusals[0].Advice}" : "",
            Inputs = [.. reading.Sources.Select(s => s.Named(garage.NameOf(lamp.TrackPath)).ToInput())],
        };
    }

    /// <summary>Keeps what was followed, in place of what was kept before.</summary>
    /// <param name="track">The brightness.</param>
    /// <returns>Why it was not kept; blank when it was.</returns>
    public string Keep(LampTrack track)
    {
        ArgumentNullException.ThrowIfNull(track);
        try
        {
            // What is no lamp is somebody's own file.
            if (HasTrack && LampFile.Load(TrackPath) is { Sources: [var there, ..] }
                && !there.Text.StartsWith(LampText.First, StringComparison.Ordinal))
            {
                return $"{Path.GetFileName(TrackPath)} is there already and is no lamp's brightness: give that file another name.";
            }

            WholeFile.Write(TrackPath, Encoding.UTF8.GetBytes(LampText.Of(track)));
            return "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"The lamp's brightness was not kept: {e.Message}";
        }
    }
}
