using Heaveline.Files;
using Heaveline.Files.Films;
using Heaveline.Films;

namespace Heaveline.Tests.Films;

/// <summary>A kept track belongs to the film and the marks that it was followed from, and to no other.</summary>
public class FilmOriginTests
{
    private static readonly FilmMarks Marks = new()
    {
        Time = 1.23456, Front = new(1050.55, 579.12), Rear = new(873.2, 577.9), BoxFrom = new(870, 520), BoxTo = new(1055, 572),
    };

    private static FilmTrack Track(FilmOrigin? origin) => new()
    {
        Width = 1920, Height = 1080, GoesRight = true, BodyPivot = new(900, 500), Origin = origin, PlayedSlower = 8.0,
        Frames = [.. Enumerable.Range(0, 20).Select(i => new FilmFrame { Time = i / 60.0 })], Remarks = ["one", "two"],
    };

    private static FilmSheet Sheet(FilmMarks? marks) => new() { Name = "film", Seen = "car", Wheelbase = new(2.7), Marks = marks };

    [Fact]
    public void What_a_track_came_from_reads_back_as_it_was_written()
    {
        var track = Track(new FilmOrigin(123_456_789_012, new string('A', 64), Marks));
        var read = TrackFile.Read(new SourceText("track.csv", TrackText.Of(track))).Value!;
        Assert.Equal(track.Origin, read.Origin);
        Assert.Equal(8.0, read.PlayedSlower);
        Assert.Equal(track.Remarks, read.Remarks);
        var none = TrackFile.Read(new SourceText("track.csv", TrackText.Of(track with { Origin = null, PlayedSlower = null }))).Value!;
        Assert.Null(none.Origin);
        Assert.Null(none.PlayedSlower);
    }

    [Theory]
    [InlineData("from,bytes,12,ends,AA", "which film the track is of")]
    [InlineData("from,bytes,-1,ends,AA,at_s,0,front_px,1,2,rear_px,3,4,box_px,1,2,3,4", "which film the track is of")]
    [InlineData("played_slower,none", "how many times slower")]
    [InlineData("played_slower,0", "how many times slower")]
    public void A_line_that_says_it_wrongly_is_refused(string line, string says)
    {
        var text = TrackText.Of(Track(null) with { PlayedSlower = null }).Split('\n').ToList();
        text.Insert(2, line);
        var read = TrackFile.Read(new SourceText("track.csv", string.Join('\n', text)));
        Assert.Null(read.Value);
        Assert.Contains(says, read.Refusals[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_marks_another_film_and_a_film_that_grew_are_told_and_marks_as_they_are_written_down_are_the_same()
    {
        using var scratch = new Cli.Scratch();
        var film = scratch["a.mp4"];
        File.WriteAllBytes(film, [.. Enumerable.Range(0, 300_000).Select(i => (byte)(i * 7))]);
        var track = Track(FilmOrigins.Of(film, Marks));
        Assert.Equal("", FilmOrigins.Unlike(track, Sheet(Marks), film));
        var rounded = Marks with { Time = 1.2346, Front = new(1050.5, 579.1), Doubt = 3.0 };
        Assert.Equal("", FilmOrigins.Unlike(track, Sheet(rounded), film));
        Assert.Equal("", FilmOrigins.Unlike(track, Sheet(Marks), null));
        Assert.Equal("", FilmOrigins.Unlike(Track(null), Sheet(Marks with { Time = 9.0 }), film));
        Assert.Contains("other marks", FilmOrigins.Unlike(track, Sheet(Marks with { Rear = new(880, 577.9) }), film), StringComparison.Ordinal);

        var bytes = File.ReadAllBytes(film);
        bytes[^10] ^= 1;
        File.WriteAllBytes(film, bytes);
        Assert.Contains("another film than a.mp4", FilmOrigins.Unlike(track, Sheet(Marks), film), StringComparison.Ordinal);
        File.WriteAllBytes(film, [1, 2, 3]);
        Assert.Contains("another film", FilmOrigins.Unlike(track, Sheet(Marks), film), StringComparison.Ordinal);
    }
}
