using Heaveline.Files.Garages;

namespace Heaveline.Tests.Files.Films;

/// <summary>Films that come into a garage: what is let in, and that nothing is left of what is not.</summary>
public sealed class FilmFolderTests : IDisposable
{
    private static readonly byte[] Begins = [0, 0, 0, 24, .. "ftypmp42"u8, 0, 0, 0, 0, .. "isom"u8];
    private readonly TemporaryFolder folder = new();

    private Garage Garage => new(folder.Root);

    [Fact]
    public void A_film_comes_in_byte_for_byte_under_its_own_name_and_never_in_place_of_another()
    {
        Assert.Null(FilmFolder.Refused(Garage, "School hump (2).MOV", Begins.Length, long.MaxValue));
        var (name, problem) = FilmFolder.Put(Garage, "School hump (2).MOV", Begins.Length, new MemoryStream(Begins), default);
        Assert.Equal(("films/School hump (2).MOV", ""), (name, problem));
        Assert.Equal(Begins, File.ReadAllBytes(Path.Combine(folder.Root, name!)));
        Assert.Equal([name!], GarageFilm.Undescribed(Garage));
        Assert.Contains("already", FilmFolder.Refused(Garage, "School hump (2).MOV", Begins.Length, long.MaxValue), StringComparison.Ordinal);
        // One that came between question and bytes.
        byte[] other = [.. Begins, 1];
        Assert.Contains(
            "already", FilmFolder.Put(Garage, "School hump (2).MOV", other.Length, new MemoryStream(other), default).Problem,
            StringComparison.Ordinal);
        Assert.Equal(Begins, File.ReadAllBytes(Path.Combine(folder.Root, name!)));
    }

    [Theory]
    [InlineData("../up.mp4", 100, "without a folder")]
    [InlineData("up.exe", 100, "must end in .mp4")]
    [InlineData(".up.mp4", 100, "hidden")]
    [InlineData("CON.mp4", 100, "device")]
    [InlineData("a\nb.mp4", 100, "control characters")]
    [InlineData("up.mp4", 0, "is empty")]
    [InlineData("up.mp4", 2_000_000_001, "at most 2")]
    [InlineData("up.mp4", 1_500_000_000, "The disk has room for 2")]
    [InlineData("up.mp4", 1_500_000_000, "and the film has 1.50 GB")]
    public void What_is_not_let_in_says_why(string file, long bytes, string words) =>
        Assert.Contains(words, FilmFolder.Refused(Garage, file, bytes, 2_000_000_000), StringComparison.Ordinal);

    [Fact]
    public void A_small_film_on_a_full_disk_has_a_size() => Assert.Contains(
        "The disk has room for 12.0 MB, of which 1.00 GB stay free, and the film has 3.2 MB.",
        FilmFolder.Refused(Garage, "up.mp4", 3_200_000, 12_000_000),
        StringComparison.Ordinal);

    [Theory]
    [InlineData("#EXTM3U\nhttp://")]
    [InlineData("ffconcat version 1.0\nfile /etc/passwd")]
    [InlineData("PK and no film at all")]
    [InlineData("RIFF0000WAVEfmt")]
    public void What_does_not_begin_as_a_film_is_not_kept_whatever_its_name_says(string text)
    {
        var bytes = System.Text.Encoding.ASCII.GetBytes(text);
        var (name, problem) = FilmFolder.Put(Garage, "lane.mp4", bytes.Length, new MemoryStream(bytes), default);
        Assert.Null(name);
        Assert.Contains("is no film", problem, StringComparison.Ordinal);
        Assert.Empty(Kept);
    }

    [Fact]
    public void What_does_not_arrive_whole_or_is_stopped_leaves_nothing()
    {
        Assert.Throws<IOException>(() => FilmFolder.Put(Garage, "lane.mp4", Begins.Length + 1, new MemoryStream(Begins), default));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => FilmFolder.Put(Garage, "lane.mp4", Begins.Length, new MemoryStream(Begins), stop.Token));
        Assert.Empty(Kept);
    }

    [Fact]
    public void What_a_killed_program_left_of_a_film_goes_and_what_another_is_writing_stays()
    {
        var films = Directory.CreateDirectory(Path.Combine(folder.Root, FilmFolder.Folder)).FullName;
        string[] names = [".old.mp4.abcdefgh.ij0.partial", ".written.mp4.abcdefgh.ij0.partial", ".notes.txt.abcdefgh.ij0.partial"];
        string[] left = [.. names.Select(name => Path.Combine(films, name))];
        var whole = Path.Combine(films, "lane.mp4");
        using (var held = new FileStream(left[1], FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            File.WriteAllBytes(left[0], Begins);
            File.WriteAllBytes(left[2], Begins);
            Assert.All(left, file => File.SetLastWriteTimeUtc(file, DateTime.UtcNow.AddHours(-1.0)));
            Assert.Equal("films/lane.mp4", FilmFolder.Put(Garage, "lane.mp4", Begins.Length, new MemoryStream(Begins), default).Name);
            Assert.Equal(new[] { left[1], left[2], whole }.Order(StringComparer.Ordinal), Kept.Order(StringComparer.Ordinal));
        }

        // The room is told without it, before anything comes.
        Assert.InRange(FilmFolder.RoomOf(Garage), 1, long.MaxValue);
        Assert.Equal(new[] { left[2], whole }.Order(StringComparer.Ordinal), Kept.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Nothing_is_swept_where_a_link_leads()
    {
        var elsewhere = Directory.CreateTempSubdirectory("heaveline-films-").FullName;
        try
        {
            var left = Path.Combine(elsewhere, ".old.mp4.abcdefgh.ij0.partial");
            File.WriteAllBytes(left, Begins);
            File.SetLastWriteTimeUtc(left, DateTime.UtcNow.AddHours(-1.0));
            Directory.CreateSymbolicLink(Path.Combine(folder.Root, FilmFolder.Folder), elsewhere);
            FilmFolder.RoomOf(Garage);
            Assert.True(File.Exists(left));
        }
        finally
        {
            Directory.Delete(elsewhere, recursive: true);
        }
    }

    [Fact]
    public void No_film_goes_out_of_the_garage_through_a_link()
    {
        var elsewhere = Directory.CreateTempSubdirectory("heaveline-films-").FullName;
        try
        {
            Directory.CreateSymbolicLink(Path.Combine(folder.Root, FilmFolder.Folder), elsewhere);
            Assert.Contains("leads out", FilmFolder.Refused(Garage, "lane.mp4", 100, long.MaxValue), StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(elsewhere);
        }
    }

    public void Dispose() => folder.Dispose();

    private IEnumerable<string> Kept => Directory.EnumerateFiles(folder.Root, "*", SearchOption.AllDirectories);
}
