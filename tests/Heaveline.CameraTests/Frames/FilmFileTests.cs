using System.Diagnostics;
using Heaveline.Camera.Frames;
using Heaveline.CameraTests.Drawn;

namespace Heaveline.CameraTests.Frames;

public sealed class FilmFileTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("heaveline-frames-");

    [Fact]
    public void Frames_come_as_they_were_drawn_each_with_its_time()
    {
        using var written = new WrittenFilm(Planted.Small, quality: 10);
        var film = FilmFile.Open(written.Path);
        Assert.Equal((Planted.Small.Width, Planted.Small.Height, Planted.Small.About), (film.Width, film.Height, film.About));
        foreach (var (drawn, read) in Planted.Small.Pictures().Zip(film.Pictures()))
        {
            Assert.Equal(drawn.Index, read.Index);
            Assert.Equal(drawn.Time, read.Time, 1e-4);
            Assert.InRange(Cv2.Norm(drawn.Grey, read.Grey, NormTypes.L1) / (film.Width * film.Height), 0.0, 3.0);
        }

        Assert.Equal(film.About, film.Pictures().Count());
    }

    [Fact]
    public void Slow_motion_keeps_the_files_time()
    {
        using var written = new WrittenFilm(Planted.Small with { To = Planted.Small.From + 0.3 }, slowedTo: 15.0);
        Assert.Equal(1.0 / 15.0, FilmFile.Open(written.Path).Pictures().Select(p => p.Time).Skip(1).First(), 1e-3);
    }

    [Fact]
    public void Reading_ends_when_nobody_wants_more_and_when_it_is_stopped()
    {
        using var written = new WrittenFilm(Planted.Small);
        Assert.Equal(3, FilmFile.Open(written.Path).Pictures().Take(3).Count());
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() =>
        {
            foreach (var picture in FilmFile.Open(written.Path).Pictures(stop.Token))
            {
                stop.Cancel();
            }
        });
    }

    // What a phone writes into slow motion that it keeps as 30 a second.
    [Theory]
    [InlineData("240", 8.0)]
    [InlineData("120", 4.0)]
    [InlineData("30", 1.0)]
    [InlineData("24", 0.8)]
    [InlineData("3", 0.1)]
    [InlineData("1", null)]
    [InlineData("3600", null)]
    [InlineData("fast", null)]
    public void The_rate_of_the_sensor_that_a_phone_wrote_is_handed_over_beside_the_films_own(string rate, double? slower) => Assert.Equal(
        slower,
        FilmFile.Open(Made(
            "slow.mp4", "-f", "lavfi", "-i", "testsrc=s=640x360:d=0.5:r=30", "-pix_fmt", "yuv420p", "-movflags", "use_metadata_tags", "-metadata",
            $"com.android.capture.fps={rate}")).Known.PlayedSlower);

    [Fact]
    public void A_film_that_is_not_there_is_refused() => Refused("There is no film", Path.Combine(folder.FullName, "none.mp4"));

    [Fact]
    public void A_file_that_is_no_film_is_refused()
    {
        var file = Path.Combine(folder.FullName, "notes.mp4");
        File.WriteAllText(file, "wheelbase: 2.70 m\n");
        Refused("notes.mp4 is no film that can be read", file);
    }

    // A play list would have other files opened in its name.
    [Fact]
    public void A_play_list_is_no_film()
    {
        var file = Path.Combine(folder.FullName, "list.m3u8");
        File.WriteAllText(file, "#EXTM3U\n#EXT-X-TARGETDURATION:5\n#EXTINF:5,\nfile:///etc/hostname\n#EXT-X-ENDLIST\n");
        Refused("list.m3u8 is no film that can be read", file);
    }

    [Fact]
    public void Sound_alone_is_no_film() =>
        Refused("has no video track", Made("sound.mp4", "-f", "lavfi", "-i", "sine=d=1", "-c:a", "aac"));

    [Fact]
    public void One_frame_is_no_film() =>
        Refused("has one frame", Made("one.mp4", "-f", "lavfi", "-i", "testsrc=s=640x360:d=1:r=10", "-frames:v", "1", "-pix_fmt", "yuv420p"));

    [Fact]
    public void An_upright_film_is_refused_by_name() =>
        Refused("is filmed upright (360 × 640 pixels)", Made("upright.mp4", "-f", "lavfi", "-i", "testsrc=s=360x640:d=0.5:r=10", "-pix_fmt",
            "yuv420p"));

    [Fact]
    public void A_film_of_a_phone_held_upright_is_one_though_its_sensor_lies_level()
    {
        var level = Made("level.mp4", "-f", "lavfi", "-i", "testsrc=s=640x360:d=0.5:r=10", "-pix_fmt", "yuv420p");
        Refused("is filmed upright", Made("turned.mp4", "-i", level, "-c", "copy", "-metadata:s:v:0", "rotate=90"));
    }

    [Fact]
    public void A_film_whose_pixels_are_not_square_is_refused_and_how_to_write_it_anew_is_said() =>
        Refused("are not square (4:3)", Made("narrow.mp4", "-f", "lavfi", "-i", "testsrc=s=480x360:d=0.5:r=10", "-vf", "setsar=4/3", "-pix_fmt",
            "yuv420p"));

    // Half of the frames are read before the rest turns out to be none.
    [Fact]
    public void A_film_that_breaks_off_is_no_shorter_film()
    {
        var file = Made("broken.avi", "-f", "lavfi", "-i", "testsrc=s=640x360:d=4:r=25", "-c:v", "mjpeg", "-q:v", "5");
        var bytes = File.ReadAllBytes(file);
        Array.Clear(bytes, bytes.Length / 8, bytes.Length * 3 / 4);
        File.WriteAllBytes(file, bytes);
        Refused("breaks off after", file);
    }

    [Fact]
    public void A_film_of_more_than_2_GB_is_refused_before_it_is_read()
    {
        var file = Path.Combine(folder.FullName, "long.mp4");
        using (var stream = File.Create(file))
        {
            stream.SetLength(FilmFile.Heaviest + 1);
        }

        Refused("weighs 2.0 GB", file);
    }

    public void Dispose() => folder.Delete(recursive: true);

    private static void Refused(string words, string film) => Assert.Contains(
        words, Assert.Throws<FilmRefusedException>(() => FilmFile.Open(film).Pictures().Count()).Message, StringComparison.Ordinal);

    private string Made(string name, params string[] words)
    {
        var file = Path.Combine(folder.FullName, name);
        using var ffmpeg = Process.Start("ffmpeg", ["-y", "-loglevel", "error", .. words, file]);
        ffmpeg.WaitForExit();
        Assert.Equal(0, ffmpeg.ExitCode);
        return file;
    }
}
