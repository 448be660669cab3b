using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Garages;
using Heaveline.Files.Roads;

namespace Heaveline.Tests.Files;

/// <summary>Pipes, sockets and devices are seen for what they are before anything opens them, and none is ever replaced.</summary>
public sealed class SpecialFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_pipe_is_refused_as_a_car_a_road_and_a_profile_and_nothing_waits_for_it()
    {
        var pipe = Fifo.At(Path.Combine(folder.Root, "car.yaml"));
        var profile = Fifo.At(Path.Combine(folder.Root, "lane.csv"));
        folder.Write("lane.yaml", "road: lane\nprofile: lane.csv\n");
        File.CreateSymbolicLink(Path.Combine(folder.Root, "link.yaml"), pipe);
        foreach (var refusals in new[]
        {
            Fifo.Soon(() => CarFile.Load(pipe).Refusals),
            Fifo.Soon(() => CarFile.Load(Path.Combine(folder.Root, "link.yaml")).Refusals),
            Fifo.Soon(() => NamedRoads.Find(pipe).Refusals),
            Fifo.Soon(() => RoadFile.Load(profile).Refusals),
            Fifo.Soon(() => RoadFile.Load(Path.Combine(folder.Root, "lane.yaml")).Refusals),
        })
        {
            Assert.Contains("is no regular file", Assert.Single(refusals).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_pipe_in_a_garage_is_listed_as_refused_and_the_others_are_read_and_saved()
    {
        folder.Write("fern.yaml", "car: Fern\n");
        Fifo.At(Path.Combine(folder.Root, "pipe.yaml"));
        var garage = new Garage(folder.Root);
        var listed = Fifo.Soon(garage.List).Entries.Where(entry => !entry.IsBuiltIn).ToDictionary(entry => entry.Name);
        Assert.Contains("is no regular file", listed["pipe.yaml"].Problem, StringComparison.Ordinal);
        Assert.Equal("Fern", listed["fern.yaml"].Title);
        Assert.Equal(SaveEnd.NotWritten, Fifo.Soon(() => garage.Save("pipe.yaml", "car: x\n", null)).End);
        Assert.Equal(FileNodeKind.Special, FileNode.Of(Path.Combine(folder.Root, "pipe.yaml")));
        Assert.Equal(SaveEnd.Saved, garage.Save("fern.yaml", "car: x\n", Stamp.Of("car: Fern\n")).End);
    }

    [Fact]
    public void A_pipe_in_the_place_of_the_garages_lock_or_of_a_version_keeps_nobody_waiting()
    {
        folder.Write("fern.yaml", "car: Fern\n");
        Directory.CreateDirectory(Path.Combine(folder.Root, "earlier"));
        var until = new DateTime(2031, 5, 7, 8, 9, 10, DateTimeKind.Utc);
        Fifo.At(Path.Combine(folder.Root, "earlier", "fern.2031-05-07T080910000.yaml"));
        var garage = new Garage(folder.Root);
        Assert.Contains("is no regular file", Fifo.Soon(() => garage.ReadEarlier("fern.yaml", until)).Refusal!.Message, StringComparison.Ordinal);
        Fifo.At(Path.Combine(folder.Root, ".heaveline-lock"));
        Assert.Equal(SaveEnd.NotWritten, Fifo.Soon(() => garage.Save("fern.yaml", "car: x\n", Stamp.Of("car: Fern\n"))).End);
    }

    // Some of these never end and some never begin: none is opened, by whatever way it is named.
    [Theory]
    [InlineData("/proc/kmsg")]
    [InlineData("/proc/self/environ")]
    [InlineData("/sys/kernel/mm/transparent_hugepage/enabled")]
    public void What_the_system_makes_up_while_it_is_read_is_no_input(string file)
    {
        Assert.SkipUnless(File.Exists(file), "There is no such file here.");
        var (car, profile) = (Path.Combine(folder.Root, "car.yaml"), Path.Combine(folder.Root, "lane.csv"));
        File.CreateSymbolicLink(car, file);
        File.CreateSymbolicLink(profile, file);
        foreach (var refusals in new[]
        {
            Fifo.Soon(() => CarFile.Load(file).Refusals),
            Fifo.Soon(() => CarFile.Load(car).Refusals),
            Fifo.Soon(() => RoadFile.Load(profile).Refusals),
        })
        {
            Assert.Contains("that the system makes up while it is read; it is not opened", Assert.Single(refusals).Message, StringComparison.Ordinal);
        }

        Assert.Throws<IOException>(() => Bounded.Read(file, 1000));
    }

    [Fact]
    public void What_stands_on_the_disk_is_told_apart()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no device nodes here.");
        var file = folder.Write("a.txt", "a");
        var (link, nowhere) = (Path.Combine(folder.Root, "link"), Path.Combine(folder.Root, "nowhere"));
        File.CreateSymbolicLink(link, "/dev/null");
        File.CreateSymbolicLink(nowhere, "not-there");
        Assert.Equal(
            [FileNodeKind.File, FileNodeKind.Folder, FileNodeKind.Special, FileNodeKind.Special, FileNodeKind.Nothing, FileNodeKind.Nothing],
            new[] { file, folder.Root, "/dev/zero", link, nowhere, "a\0b" }.Select(FileNode.Of));
    }

    [Fact]
    public void A_whole_file_is_written_through_a_link_which_stays()
    {
        var target = folder.Write("far/numbers.csv", "old");
        var link = Path.Combine(folder.Root, "near.csv");
        File.CreateSymbolicLink(link, Path.Combine("far", "numbers.csv"));
        WholeFile.Write(link, "new"u8.ToArray());
        Assert.Equal(Path.Combine("far", "numbers.csv"), new FileInfo(link).LinkTarget);
        Assert.Equal("new", File.ReadAllText(target));

        // Where the link leads there need be nothing yet.
        File.Delete(target);
        WholeFile.Write(link, "again"u8.ToArray());
        Assert.Equal("again", File.ReadAllText(target));
        Assert.Equal([target], Directory.GetFileSystemEntries(Path.Combine(folder.Root, "far")));
    }

    [Fact]
    public void A_link_in_a_circle_or_to_a_car_is_not_written_through()
    {
        var car = folder.Write("car.yaml", "car: mine\n");
        File.CreateSymbolicLink(Path.Combine(folder.Root, "round.csv"), "round.csv");
        File.CreateSymbolicLink(Path.Combine(folder.Root, "car.csv"), "car.yaml");
        Assert.Contains("circle", Refused("round.csv"), StringComparison.Ordinal);
        Assert.Contains("is a link to", Refused("car.csv"), StringComparison.Ordinal);
        Assert.Equal("car: mine\n", File.ReadAllText(car));

        string Refused(string name) =>
            Assert.ThrowsAny<IOException>(() => WholeFile.Write(Path.Combine(folder.Root, name), "x"u8.ToArray())).Message;
    }

    [Fact]
    public void What_is_written_into_a_pipe_comes_out_of_it()
    {
        var pipe = Fifo.At(Path.Combine(folder.Root, "pipe.csv"));
        var read = Task.Run(() => File.ReadAllText(pipe), TestContext.Current.CancellationToken);
        Assert.Equal(7, Fifo.Soon(() =>
        {
            WholeFile.Write(pipe, "numbers"u8.ToArray());
            return read.GetAwaiter().GetResult().Length;
        }));
        Assert.Equal(FileNodeKind.Special, FileNode.Of(pipe));
        Assert.Equal([pipe], Directory.GetFileSystemEntries(folder.Root));
    }
}
