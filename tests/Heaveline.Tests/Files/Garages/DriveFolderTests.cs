using System.Text;
using Heaveline.Files;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Tests.Files.Drives;

namespace Heaveline.Tests.Files.Garages;

public class DriveFolderTests
{
    private static readonly byte[] Log = LogWriter.Bytes(new LogWriter().Whole);

    [Fact]
    public void A_log_is_kept_byte_for_byte_beside_what_is_written_down_and_read_from_there()
    {
        using var folder = new TemporaryFolder();
        var garage = new Garage(folder.Root);
        var begun = garage.Drives.Begin("Larch Lane, before", "trip.csv", Log);
        Assert.Equal(("larch-lane-before", ""), (begun.Drive, begun.Message));
        Assert.Equal(Log, File.ReadAllBytes(Path.Combine(folder.Root, "drives", "larch-lane-before", "trip.csv")));
        Assert.Equal(["trip.csv"], garage.Drives.LogFiles("larch-lane-before"));
        Assert.Equal(["larch-lane-before"], garage.Drives.Names);
        var sheet = garage.Drive(DriveFolders.FileOf("larch-lane-before"));
        Assert.Empty(sheet.Refusals);
        Assert.Equal("Larch Lane, before", sheet.Value!.Name);
        Assert.Empty(sheet.Value.Rejected);
        var reading = garage.Drives.Log("larch-lane-before", [], TestContext.Current.CancellationToken);
        Assert.NotNull(reading.Log);
        Assert.All(reading.Log.Tracks, track => Assert.Equal("trip.csv", track.File));
        Assert.DoesNotContain(reading.Log.Story, line => line.Text.Contains(folder.Root, StringComparison.Ordinal));
        var entry = Assert.Single(garage.List().Drives);
        Assert.Equal(("drives/larch-lane-before/drive.yaml", "Larch Lane, before", 0), (entry.Name, entry.Title, entry.Refusals));
        Assert.Equal("larch-lane-before", DriveFolders.DriveOf(entry.Name));
    }

    [Fact]
    public void A_decision_of_the_reading_is_taken_otherwise_by_the_drives_own_file()
    {
        using var folder = new TemporaryFolder();
        var garage = new Garage(folder.Root);
        garage.Drives.Begin("Lane", "a.csv", Log);
        var file = DriveFolders.FileOf("lane");
        var text = DriveFile.Edit(garage.Read(file).Text!, Heaveline.Files.Editing.KeyEdit.Put(["take", "speed"], "km/h")).Text!;
        garage.Save(file, text, garage.Read(file).Stamp);
        var sheet = garage.Drive(file).Value!;
        Assert.Equal("speed", Assert.Single(sheet.Taken).About);
        var stop = TestContext.Current.CancellationToken;
        var (plain, otherwise) = (garage.Drives.Log("lane", [], stop).Log!, garage.Drives.Log("lane", sheet.Taken, stop).Log!);
        // Metres a second read as kilometres an hour are 3.6 times too slow.
        Assert.Equal(
            plain.Of(Heaveline.Drives.SensorKind.Speed)!.Values[0].Max() / 3.6, otherwise.Of(Heaveline.Drives.SensorKind.Speed)!.Values[0].Max(), 9);
    }

    [Fact]
    public void A_second_drive_of_the_same_name_has_a_folder_of_its_own_and_no_log_is_written_over()
    {
        using var folder = new TemporaryFolder();
        var drives = new Garage(folder.Root).Drives;
        Assert.Equal("lane", drives.Begin("Lane", "a.csv", Log).Drive);
        Assert.Equal("lane-2", drives.Begin("lane!", "a.csv", Encoding.UTF8.GetBytes("another")).Drive);
        Assert.Equal(("lane", "lane-2"), (drives.Begin("Lane", "a.csv", Log).Drive, drives.Begin("Lane", "a.csv", "another"u8.ToArray()).Drive));
        Assert.Equal("lane", drives.Add("lane", "b.csv", Log).Drive);
        var again = drives.Add("lane", "a.csv", Encoding.UTF8.GetBytes("x"));
        Assert.Null(again.Drive);
        Assert.Equal("The drive has a file a.csv already, and it stays as it is.", again.Message);
        Assert.Equal(Log, File.ReadAllBytes(Path.Combine(folder.Root, "drives", "lane", "a.csv")));
        Assert.Equal(["a.csv", "b.csv"], drives.LogFiles("lane"));
        Assert.Null(drives.Add("none", "a.csv", Log).Drive);
    }

    [Theory]
    [InlineData("../up.csv", "without a folder")]
    [InlineData("drive.yaml", "must end in .csv or .txt")]
    [InlineData(".hidden.csv", "no empty or hidden part")]
    [InlineData("CON.csv", "device")]
    [InlineData("a<b.csv", "must not hold")]
    [InlineData("a\\b.csv", "must not hold")]
    public void A_file_that_must_not_come_in_stays_out(string name, string words)
    {
        using var folder = new TemporaryFolder();
        var outcome = new Garage(folder.Root).Drives.Begin("Lane", name, Log);
        Assert.Null(outcome.Drive);
        Assert.Contains(words, outcome.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(folder.Root, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void An_empty_file_and_one_that_is_too_long_are_refused_in_words()
    {
        using var folder = new TemporaryFolder();
        var drives = new Garage(folder.Root).Drives;
        Assert.Equal("The file is empty.", drives.Begin("Lane", "a.csv", ReadOnlyMemory<byte>.Empty).Message);
        var long_ = drives.Begin("Lane", "a.csv", new byte[FileFormat.DriveLog.MostBytes + 1]);
        Assert.Contains("it must have 67108864 or fewer", long_.Message, StringComparison.Ordinal);
        Assert.Empty(drives.Names);
    }

    [Fact]
    public void A_name_of_any_letters_makes_a_plain_folder()
    {
        Assert.Equal("larch-lane-before", DriveFolders.NameFrom("  Larch Lane: before/..\\ "));
        Assert.Equal("drive", DriveFolders.NameFrom("äöü"));
        Assert.Equal("drive", DriveFolders.NameFrom("con"));
        Assert.Equal(60, DriveFolders.NameFrom(new string('x', 500)).Length);
    }

    [Fact]
    public void Nothing_outside_the_garage_is_read_or_written_through_a_link()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Links need rights there.");
        }

        using var folder = new TemporaryFolder();
        using var outside = new TemporaryFolder();
        outside.Write("secret.csv", "1,2,3\n");
        var drives = new Garage(folder.Root).Drives;
        drives.Begin("Lane", "a.csv", Log);
        File.CreateSymbolicLink(Path.Combine(folder.Root, "drives", "lane", "b.csv"), Path.Combine(outside.Root, "secret.csv"));
        Assert.Equal(["a.csv"], drives.LogFiles("lane"));
        Directory.CreateSymbolicLink(Path.Combine(folder.Root, "drives", "led"), outside.Root);
        Assert.Equal(["lane"], drives.Names);
        Assert.Null(drives.Add("led", "c.csv", Log).Drive);
        Assert.False(drives.Log("led", [], TestContext.Current.CancellationToken).Log is not null);
        Directory.Move(Path.Combine(folder.Root, "drives"), Path.Combine(folder.Root, "moved"));
        Directory.CreateSymbolicLink(Path.Combine(folder.Root, "drives"), outside.Root);
        Assert.Equal("The folder drives is a link.", drives.Begin("Lane", "a.csv", Log).Message);
        Assert.Equal(["secret.csv"], Directory.EnumerateFileSystemEntries(outside.Root).Select(Path.GetFileName));
    }

    [Fact]
    public void A_bump_is_rejected_in_the_text_and_every_other_character_stays()
    {
        var text = DriveFile.Template("Lane") + "note: dry # and cold\n";
        var once = DriveFile.Edit(text, DriveFile.Rejecting([201.5, 84.25])).Text!;
        Assert.Contains("\nrejected: [84.25 s, 201.5 s]\n", once, StringComparison.Ordinal);
        Assert.Contains("note: dry # and cold", once, StringComparison.Ordinal);
        var twice = DriveFile.Edit(once, DriveFile.Rejecting([84.25])).Text!;
        using var folder = new TemporaryFolder();
        Assert.Equal([84.25], DriveFile.Read(new SourceText(Path.Combine(folder.Root, "drive.yaml"), twice), folder.Root).Value!.Rejected);
        var none = DriveFile.Edit(twice, DriveFile.Rejecting([])).Text!;
        Assert.Empty(DriveFile.Read(new SourceText(Path.Combine(folder.Root, "drive.yaml"), none), folder.Root).Value!.Rejected);
    }
}
