using Heaveline.Files;
using Heaveline.Files.Films;
using Heaveline.Films;
using Heaveline.Tests.Films;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Films;

/// <summary>The sheet of a film and its kept track.</summary>
public class FilmFileTests
{
    private static readonly string Folder = Path.Combine(Checkout.Root, "examples", "films");

    [Fact]
    public void A_sheet_says_marks_and_wheelbase_with_their_doubts_and_where_the_track_lies()
    {
        var path = Path.Combine(Folder, "grey-saloon-25.yaml");
        var sheet = FilmFile.Load(path).Value!;
        Assert.Equal(("grey saloon", "school hump"), (sheet.Seen, sheet.Place));
        Assert.Equal((2.70, 0.01), (sheet.Wheelbase.Si, sheet.Wheelbase.Doubt.HalfWidth));
        Assert.Equal(new PicturePoint(1050.6, 579.1), sheet.Marks!.Front);
        Assert.True(sheet.Marks.GoesRight);
        Assert.Equal(25.0 / 3.6, sheet.Given.Speed!.Value.Si, 1e-9);
        Assert.Equal(Path.Combine(Folder, "grey-saloon-25.csv"), FilmFile.TrackOf(path, sheet));
        Assert.True(File.Exists(FilmFile.TrackOf(path, sheet)));
    }

    [Theory]
    [InlineData("wheelbase: 2.70 m", "wheelbase: 0 m", "wheelbase")]
    [InlineData("wheelbase: 2.70 m", "wheelbase: 90 m", "wheelbase")]
    [InlineData("wheelbase: 2.70 m\n", "", "wheelbase")]
    [InlineData("front: [1050, 579]", "front: [930, 579]", "60 pixels")]
    [InlineData("to: [1055, 572]", "to: [800, 572]", "below and to the right")]
    [InlineData("from: [870, 520]", "from: [-5, 520]", "outside the picture")]
    [InlineData("at: 1.7 s", "at: -1 s", "at")]
    [InlineData("front: [1050, 579]", "front: [1050]", "2")]
    [InlineData("film: a", "file: a", "film")]
    public void A_sheet_with_a_slip_is_refused_at_its_line(string right, string wrong, string says)
    {
        const string text = "film: a\nwheelbase: 2.70 m\nmarks:\n  at: 1.7 s\n  front: [1050, 579]\n  rear: [873, 578]\n  from: [870, 520]\n  "
            + "to: [1055, 572]\n";
        Assert.NotNull(FilmFile.Read(new SourceText("a.yaml", text)).Value);
        var read = FilmFile.Read(new SourceText("a.yaml", text.Replace(right, wrong, StringComparison.Ordinal)));
        Assert.Null(read.Value);
        Assert.Contains(read.Refusals, r => (r.Message + r.Advice).Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void A_track_that_was_written_reads_back_to_the_last_bit()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        var track = new PlantedFilm { Pass = pass, Shake = 3.0, GoesRight = false, RowTime = 1e-5 }.Track();
        track = track with
        {
            Slant = 0.17,
            Remarks = ["a wheel was lost, for a while"],
            Frames = [.. track.Frames.Select((f, i) => i == 7 ? f with { Rear = null, Camera = null } : i == 9 ? f with { Body = null } : f)],
        };
        var read = TrackFile.Read(new SourceText("a.csv", TrackText.Of(track))).Value!;
        Assert.Equal(track.Frames.AsEnumerable(), read.Frames);
        Assert.Equal(0.17, read.Slant);
        Assert.Equal((track.Width, track.Height, track.RowTime, track.GoesRight, track.BodyPivot), (read.Width, read.Height, read.RowTime,
            read.GoesRight, read.BodyPivot));
        Assert.Equal(track.Remarks.AsEnumerable(), read.Remarks);
    }

    [Theory]
    [InlineData(0, "time,x", 1)]
    [InlineData(1, "width_px,0", 2)]
    [InlineData(2, "time_s,other", 3)]
    [InlineData(5, "1.0,2.0", 6)]
    [InlineData(6, "1.0,NaN,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1,1", 7)]
    public void A_track_with_a_slip_is_refused_at_its_line(int line, string instead, int refused)
    {
        var lines = File.ReadAllLines(Path.Combine(Folder, "grey-saloon-25.csv")).Where(l => !l.StartsWith("remark",
            StringComparison.Ordinal)).ToArray();
        lines[line] = instead;
        var read = TrackFile.Read(new SourceText("a.csv", string.Join('\n', lines)));
        Assert.Null(read.Value);
        Assert.Equal(refused, Assert.Single(read.Refusals).Line);
    }

    [Fact]
    public void A_track_that_is_cut_off_or_goes_back_in_time_is_refused()
    {
        var lines = File.ReadAllLines(Path.Combine(Folder, "grey-saloon-25.csv"));
        Assert.Null(TrackFile.Read(new SourceText("a.csv", string.Join('\n', lines.Take(9)))).Value);
        (lines[20], lines[30]) = (lines[30], lines[20]);
        Assert.Null(TrackFile.Read(new SourceText("a.csv", string.Join('\n', lines))).Value);
        Assert.Null(TrackFile.Read(new SourceText("a.csv", "")).Value);
    }
}
