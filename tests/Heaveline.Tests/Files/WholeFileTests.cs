using Heaveline.Files;

namespace Heaveline.Tests.Files;

public sealed class WholeFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-whole-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_file_is_written_and_replaced_whole()
    {
        var path = Path.Combine(folder, "a.bin");
        WholeFile.Write(path, new byte[] { 1, 2, 3 });
        WholeFile.Write(path, new byte[] { 4 });
        Assert.Equal([4], File.ReadAllBytes(path));
        Assert.Single(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_write_that_fails_half_way_leaves_the_old_file_and_nothing_else()
    {
        var path = Path.Combine(folder, "a.bin");
        WholeFile.Write(path, new byte[] { 1, 2, 3 });
        Assert.Throws<InvalidOperationException>(() => WholeFile.Write(path, stream =>
        {
            stream.Write(new byte[100_000]);
            stream.Flush();
            throw new InvalidOperationException("The disk was pulled out.");
        }));
        Assert.Equal([1, 2, 3], File.ReadAllBytes(path));
        Assert.Equal([path], Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_name_that_is_a_folder_leaves_nothing_behind()
    {
        var path = Directory.CreateDirectory(Path.Combine(folder, "sub")).FullName;
        var thrown = Record.Exception(() => WholeFile.Write(path, new byte[] { 1 }));
        Assert.True(thrown is IOException or UnauthorizedAccessException, $"{thrown}");
        Assert.Equal([path], Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void A_missing_folder_is_an_error_of_its_own_name()
    {
        Assert.Throws<DirectoryNotFoundException>(() => WholeFile.Write(Path.Combine(folder, "none", "a.bin"), new byte[] { 1 }));
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    [Fact]
    public void What_killed_programs_left_beside_outputs_goes_with_the_next_output()
    {
        string Left(string name, int minutes)
        {
            var path = Path.Combine(folder, name);
            File.WriteAllText(path, "half");
            File.SetLastWriteTimeUtc(path, DateTime.UtcNow.AddMinutes(-minutes));
            return name;
        }

        string[] stale = [Left(".numbers.csv.abcdefgh.ijk.partial", 9), Left(".Other.SVG.12345678.9ab.partial", 2)];
        string[] others =
        [
            // Young; a garage's, which only its lock allows; not ours by its form; not hidden; one that is being written.
            Left(".young.csv.abcdefgh.ijk.partial", 0), Left(".car.yaml.abcdefgh.ijk.partial", 9), Left(".numbers.csv.partial", 9),
            Left("numbers.csv.abcdefgh.ijk.partial", 9), Left(".open.pdf.abcdefgh.ijk.partial", 9),
        ];
        using (new FileStream(Path.Combine(folder, others[^1]), FileMode.Open, FileAccess.Write, FileShare.None))
        {
            WholeFile.Write(Path.Combine(folder, "new.csv"), "new"u8.ToArray());
        }

        var there = Directory.GetFiles(folder).Select(Path.GetFileName);
        Assert.Equal(others.Append("new.csv").Order(StringComparer.Ordinal), there.Order(StringComparer.Ordinal));
        Assert.All(stale, name => Assert.False(File.Exists(Path.Combine(folder, name))));
    }

    [Fact]
    public void What_cannot_be_written_is_named_as_it_was_asked_for_with_what_to_do()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "There is no folder that takes no files here.");
        var thrown = Assert.ThrowsAny<IOException>(() => WholeFile.Write("/proc/x.svg", new byte[] { 1 }));
        Assert.Equal("'/proc/x.svg' cannot be written: the folder '/proc' takes no new files. Choose another folder.", thrown.Message);
        var full = Path.Combine(folder, "a.bin");
        var filled = Assert.Throws<IOException>(() => WholeFile.Write(full, _ => throw new IOException($"No space left on device : '{full}'", 28)));
        Assert.Equal($"'{full}' cannot be written: the disk of '{folder}' is full. Make room there, or choose another disk.", filled.Message);
        var denied = Assert.Throws<UnauthorizedAccessException>(() => WholeFile.Write(full, _ => throw new UnauthorizedAccessException()));
        Assert.StartsWith($"'{full}' cannot be written: you may not write in the folder '{folder}'.", denied.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }
}
