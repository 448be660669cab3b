using Heaveline.Files.Garages;

namespace Heaveline.Tests.Files.Garages;

public sealed class GarageSaveTests : IDisposable
{
    private const string Name = "fern.yaml";
    private const string First = "car: Fern # as found\n";
    private const string Second = "car: Fern, second\n";

    private readonly TemporaryFolder folder = new();
    private readonly StoppedClock clock = new(new DateTimeOffset(2031, 5, 7, 8, 9, 10, 123, TimeSpan.Zero));

    private string FilePath => Path.Combine(folder.Root, Name);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_save_writes_the_text_and_keeps_the_version_before_it()
    {
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock);
        var outcome = garage.Save(Name, Second, garage.Read(Name).Stamp);
        Assert.Equal(SaveEnd.Saved, outcome.End);
        Assert.Equal(Stamp.Of(Second), outcome.Stamp);
        Assert.Equal(Second, File.ReadAllText(FilePath));
        Assert.Equal(First, File.ReadAllText(Path.Combine(folder.Root, "earlier", "fern.2031-05-07T080910123.yaml")));
        Assert.Equal([new EarlierVersion(Name, clock.Now.UtcDateTime, First.Length)], garage.Earlier(Name));
        Assert.Equal(outcome.Earlier, Assert.Single(garage.Earlier(Name)));
        Assert.Equal(Second, garage.Read(Name).Text);
    }

    [Fact]
    public void An_earlier_version_comes_back_and_the_present_one_is_kept_in_turn()
    {
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock);
        var kept = garage.Save(Name, Second, Stamp.Of(First)).Earlier!;
        clock.Now += TimeSpan.FromHours(1);
        Assert.Equal(SaveEnd.Conflict, garage.Restore(Name, kept.Until, Stamp.Of(First)).End);
        Assert.Equal(SaveEnd.Saved, garage.Restore(Name, kept.Until, Stamp.Of(Second)).End);
        Assert.Equal(First, File.ReadAllText(FilePath));
        Assert.Equal([clock.Now.UtcDateTime, kept.Until], garage.Earlier(Name).Select(version => version.Until));
        Assert.Equal(Second, garage.ReadEarlier(Name, clock.Now.UtcDateTime).Text);
        Assert.Equal("there is no such earlier version.", garage.ReadEarlier(Name, clock.Now.UtcDateTime.AddDays(1)).Refusal!.Message);
        Assert.Equal(SaveEnd.NameRefused, garage.Restore(Name, clock.Now.UtcDateTime.AddDays(1), Stamp.Of(First)).End);

        // One that was taken away comes back too.
        File.Delete(FilePath);
        Assert.Equal(SaveEnd.Saved, garage.Restore(Name, kept.Until, null).End);
        Assert.Equal(First, File.ReadAllText(FilePath));
    }

    [Fact]
    public void At_the_end_of_the_calendar_every_version_is_still_kept()
    {
        clock.Now = DateTimeOffset.MaxValue;
        var garage = new Garage(folder.Root, clock);
        var text = First;
        Assert.Equal(SaveEnd.Saved, garage.Save(Name, text, null).End);
        for (var i = 0; i < 4; i++)
        {
            var next = First + $"# {i}\n";
            Assert.Equal(SaveEnd.Saved, garage.Save(Name, next, Stamp.Of(text)).End);
            text = next;
        }

        string[] kept = [.. garage.Earlier(Name).Select(version => garage.ReadEarlier(Name, version.Until).Text!).Order(StringComparer.Ordinal)];
        Assert.Equal([First, .. Enumerable.Range(0, 3).Select(i => First + $"# {i}\n")], kept);
        Assert.Equal(SaveEnd.Saved, garage.Restore(Name, garage.Earlier(Name)[0].Until, Stamp.Of(text)).End);
    }

    [Fact]
    public void What_a_killed_save_left_is_swept_by_the_next_one_and_nothing_else_is()
    {
        clock.Now = TimeProvider.System.GetUtcNow();
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock);
        string[] left =
            [".fern.yaml.abcd1234.xyz.partial", ".plover.yml.abcd1234.xyz.partial", "earlier/.fern.2031-05-07T080910123.yaml.0bcd1234.xyz.partial"];
        string[] others = [".fern.csv.abcd1234.xyz.partial", ".fern.yaml.partial", "fern.yaml.abcd1234.xyz.partial", ".notes"];
        foreach (var name in left.Concat(others).Append(".young.yaml.abcd1234.xyz.partial"))
        {
            var path = folder.Write(name, "half");
            File.SetLastWriteTimeUtc(path, clock.Now.UtcDateTime.AddMinutes(name.Contains("young", StringComparison.Ordinal) ? 0.0 : -2.0));
        }

        Assert.Equal(SaveEnd.Saved, garage.Save(Name, Second, Stamp.Of(First)).End);
        Assert.All(left, name => Assert.False(File.Exists(Path.Combine(folder.Root, name)), name));
        Assert.All(others, name => Assert.True(File.Exists(Path.Combine(folder.Root, name)), name));
        Assert.True(File.Exists(Path.Combine(folder.Root, ".young.yaml.abcd1234.xyz.partial")));
    }

    [Fact]
    public void The_oldest_versions_are_dropped_beyond_the_number_that_is_kept_even_when_the_clock_stands_or_goes_back()
    {
        var garage = new Garage(folder.Root, clock);
        var text = First;
        Assert.Equal(SaveEnd.Saved, garage.Save(Name, text, null).End);
        for (var i = 0; i < Garage.MostEarlier + 3; i++)
        {
            clock.Now -= TimeSpan.FromSeconds(i % 2);
            var outcome = garage.Save(Name, $"car: Fern {i}\n", Stamp.Of(text));
            Assert.Equal(SaveEnd.Saved, outcome.End);
            Assert.Equal(i < Garage.MostEarlier ? 0 : 1, outcome.Dropped);
            text = $"car: Fern {i}\n";
        }

        var versions = garage.Earlier(Name);
        Assert.Equal(Garage.MostEarlier, versions.Count);
        Assert.Equal($"car: Fern {Garage.MostEarlier + 1}\n", garage.ReadEarlier(Name, versions[0].Until).Text);
        Assert.Equal("car: Fern 2\n", garage.ReadEarlier(Name, versions[^1].Until).Text);
    }

    [Fact]
    public void A_file_that_changed_since_it_was_read_is_not_saved_over()
    {
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock);
        var read = garage.Read(Name).Stamp;
        folder.Write(Name, "car: by an editor\n");
        var outcome = garage.Save(Name, Second, read);
        Assert.Equal(SaveEnd.Conflict, outcome.End);
        Assert.Equal("car: by an editor\n", outcome.TextOnDisk);
        Assert.Equal(Second, outcome.Text);
        Assert.Equal("car: by an editor\n", File.ReadAllText(FilePath));
        Assert.Empty(garage.Earlier(Name));

        // Having seen both, one may save over it.
        Assert.Equal(SaveEnd.Saved, garage.Save(Name, Second, outcome.Stamp).End);
    }

    [Fact]
    public void A_file_that_changes_at_the_last_moment_is_not_saved_over()
    {
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock) { BeforeReplacing = () => File.WriteAllText(FilePath, "car: by an editor\n") };
        var outcome = garage.Save(Name, Second, Stamp.Of(First));
        Assert.Equal(SaveEnd.Conflict, outcome.End);
        Assert.Equal("car: by an editor\n", outcome.TextOnDisk);
        Assert.Equal("car: by an editor\n", File.ReadAllText(FilePath));
        Assert.Empty(Directory.GetFiles(folder.Root, "*.partial"));
    }

    [Fact]
    public void A_new_file_takes_no_name_that_is_taken_and_a_gone_one_is_not_made_again_unasked()
    {
        var garage = new Garage(folder.Root, clock);
        Assert.Equal(SaveEnd.Conflict, garage.Save(Name, Second, Stamp.Of(First)).End);
        Assert.False(File.Exists(FilePath));
        Assert.Equal(SaveEnd.Saved, garage.Save(Name, First, null).End);
        var outcome = garage.Save(Name, Second, null);
        Assert.Equal((SaveEnd.Conflict, First), (outcome.End, outcome.TextOnDisk));
        Assert.Equal(SaveEnd.Unchanged, garage.Save(Name, First, Stamp.Of(First)).End);

        File.Delete(FilePath);
        var late = new Garage(folder.Root, clock) { BeforeReplacing = () => File.WriteAllText(FilePath, Second) };
        Assert.Equal((SaveEnd.Conflict, Second), (late.Save(Name, First, null).End, File.ReadAllText(FilePath)));
    }

    [Fact]
    public void A_disk_that_fails_leaves_the_old_file_and_nothing_half_written()
    {
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock) { BeforeReplacing = () => throw new IOException("No space left on device.") };
        var outcome = garage.Save(Name, Second, Stamp.Of(First));
        Assert.Equal(SaveEnd.NotWritten, outcome.End);
        Assert.Equal("the file was not written: No space left on device.", outcome.Message);
        Assert.Equal(First, File.ReadAllText(FilePath));
        Assert.Empty(Directory.GetFiles(folder.Root, "*.partial"));

        // Nor is a version saved over that cannot be kept.
        Directory.Delete(Path.Combine(folder.Root, "earlier"), recursive: true);
        folder.Write("earlier", "a file in the way");
        Assert.Equal(SaveEnd.NotWritten, new Garage(folder.Root, clock).Save(Name, Second, Stamp.Of(First)).End);
        Assert.Equal(First, File.ReadAllText(FilePath));

        // A name that is a folder, and a folder that is not there.
        Directory.CreateDirectory(Path.Combine(folder.Root, "dir.yaml"));
        Assert.Equal(SaveEnd.NotWritten, new Garage(folder.Root, clock).Save("dir.yaml", Second, null).End);
        Assert.Equal(SaveEnd.NotWritten, new Garage(folder.Root, clock).Save("none/fern.yaml", Second, null).End);
    }

    [Fact]
    public void A_folder_that_may_not_be_written_leaves_the_old_file()
    {
        folder.Write(Name, First);
        folder.Write(".heaveline-lock", "");
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "Everything may be written here.");
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        File.SetUnixFileMode(folder.Root, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        try
        {
            Assert.Equal(SaveEnd.NotWritten, new Garage(folder.Root, clock).Save(Name, Second, Stamp.Of(First)).End);
            Assert.Equal(First, File.ReadAllText(FilePath));
        }
        finally
        {
            File.SetUnixFileMode(folder.Root, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    [Fact]
    public void What_would_not_be_read_again_is_not_saved()
    {
        var garage = new Garage(folder.Root, clock);
        foreach (var text in new[]
        {
            "",
            "a: 1\n",
            "car: [\n",
            "car: a\0\n",
            "car: \uD800\n",
            "car: a\nnote: &x b\n---\ncar: c\n",
            "car: a\nnote: " + new string('x', 300_000),
        })
        {
            Assert.Equal(SaveEnd.TextRefused, garage.Save(Name, text, null).End);
        }

        // A value that is refused does not keep a text from being saved.
        Assert.Equal(SaveEnd.Saved, garage.Save(Name, "car: a\nwheelbase: 2 kg\n", null).End);
        Assert.Equal(SaveEnd.Saved, garage.Save("road.yml", "road: a\n", null).End);
        Assert.Equal(SaveEnd.Saved, garage.Save("variant.yaml", "variant: a\n", null).End);
    }

    [Fact]
    public void Saves_that_race_lose_nothing()
    {
        const int Savers = 4;
        const int Each = 8;
        folder.Write(Name, "car: Fern\nnote: 0\n");
        Parallel.For(0, Savers, new ParallelOptions { MaxDegreeOfParallelism = Savers }, _ =>
        {
            var garage = new Garage(folder.Root, clock) { Patience = TimeSpan.FromMinutes(2) };
            for (var saved = 0; saved < Each;)
            {
                var text = garage.Read(Name);
                if (text.Text is null)
                {
                    continue;
                }

                var count = int.Parse(text.Text["car: Fern\nnote: ".Length..], System.Globalization.CultureInfo.InvariantCulture);
                var outcome = garage.Save(Name, $"car: Fern\nnote: {count + 1}\n", text.Stamp);
                Assert.True(outcome.End is SaveEnd.Saved or SaveEnd.Conflict, outcome.Message);
                saved += outcome.End == SaveEnd.Saved ? 1 : 0;
            }
        });
        Assert.Equal($"car: Fern\nnote: {Savers * Each}\n", File.ReadAllText(FilePath));
        Assert.Equal(Savers * Each, new Garage(folder.Root).Earlier(Name).Count);
    }

    [Fact]
    public void A_save_waits_for_another_program_and_says_when_it_has_waited_long_enough()
    {
        folder.Write(Name, First);
        var garage = new Garage(folder.Root, clock) { Patience = TimeSpan.FromMilliseconds(50) };
        using (new FileStream(Path.Combine(folder.Root, ".heaveline-lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None))
        {
            Assert.Equal(SaveEnd.Busy, garage.Save(Name, Second, Stamp.Of(First)).End);
            Assert.Equal(First, File.ReadAllText(FilePath));
        }

        Assert.Equal(SaveEnd.Saved, garage.Save(Name, Second, Stamp.Of(First)).End);
    }

    [Fact]
    public void Who_may_read_the_file_stays_and_a_byte_order_mark_too()
    {
        var path = folder.Write(Name, "\uFEFF" + First);
        var garage = new Garage(folder.Root, clock);
        var read = garage.Read(Name);
        Assert.Equal("\uFEFF" + First, read.Text);
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        }

        Assert.Equal(SaveEnd.Saved, garage.Save(Name, "\uFEFF" + Second, read.Stamp).End);
        Assert.Equal([0xEF, 0xBB, 0xBF, (byte)'c'], File.ReadAllBytes(path)[..4]);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
    }
}
