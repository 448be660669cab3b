using System.Collections.Concurrent;
using System.Diagnostics;
using Heaveline.Files.Garages;

namespace Heaveline.Tests.Files;

/// <summary>Who listens is told which files have another content, whether the system says so or not.</summary>
public sealed class GarageWatchTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-watch-").FullName;
    private readonly BlockingCollection<IReadOnlyCollection<string>> told = [];

    public GarageWatchTests()
    {
        Write("one.yaml", "car: one");
        Write("other.yaml", "car: other");
    }

    public void Dispose()
    {
        told.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_file_changed_made_or_taken_away_is_told_by_its_name(bool asksSystem)
    {
        using var watch = new GarageWatch(folder) { AsksSystem = asksSystem };
        using var listening = watch.Listen(told.Add);
        Write("one.yaml", "car: uno");
        Assert.Equal(["one.yaml"], Next());
        Write("deep/third.yaml", "car: third");
        Assert.Equal(["deep/third.yaml"], Next());
        File.Delete(Path.Combine(folder, "other.yaml"));
        Assert.Equal(["other.yaml"], Next());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_writing_that_leaves_the_content_as_it_was_is_no_news(bool asksSystem)
    {
        using var watch = new GarageWatch(folder) { AsksSystem = asksSystem };
        using var listening = watch.Listen(told.Add);
        Write("one.yaml", "car: one");
        File.SetLastWriteTimeUtc(Path.Combine(folder, "one.yaml"), DateTime.UtcNow.AddMinutes(-5));
        Write("earlier/one.yaml/2026.yaml", "car: older");
        Write(".one.yaml.x.partial", "car: half");
        Write("other.yaml", "car: autre");
        Assert.Equal(["other.yaml"], Next());
    }

    [Fact]
    public void Another_content_with_the_size_and_the_time_of_the_first_is_seen_without_the_systems_word()
    {
        using var watch = new GarageWatch(folder) { AsksSystem = false };
        var path = Path.Combine(folder, "one.yaml");
        var written = File.GetLastWriteTimeUtc(path);
        using var listening = watch.Listen(told.Add);
        Write("one.yaml", "car: uno");
        File.SetLastWriteTimeUtc(path, written);
        Assert.Equal(["one.yaml"], Next());
    }

    [Fact]
    public void A_file_still_being_written_is_told_once_and_whole()
    {
        using var watch = new GarageWatch(folder);
        using var listening = watch.Listen(names => told.Add([.. names, File.ReadAllText(Path.Combine(folder, "one.yaml"))]));
        // Where the machine stood still between two parts for as long as a file must be left alone, a half that was told is no fault: once more.
        var (number, standstill) = (0, TimeSpan.MaxValue);
        for (; standstill >= GarageWatch.Quiet && number < 20; number++)
        {
            standstill = WriteSlowly("one.yaml", number);
            var next = Next();
            while (standstill >= GarageWatch.Quiet && next.Count == 2 && next.Last() != Slowly(number))
            {
                next = Next();
            }

            while (standstill >= GarageWatch.Quiet && told.TryTake(out _, TimeSpan.FromSeconds(1)))
            {
                // What was told half is told once more.
            }

            Assert.Equal(["one.yaml", Slowly(number)], next);
        }

        Assert.SkipWhen(standstill >= GarageWatch.Quiet, "This machine stands still all the time.");
        Assert.False(told.TryTake(out _, TimeSpan.FromSeconds(1)));
    }

    [Fact]
    public void Who_listens_no_more_is_told_no_more_and_a_late_listener_begins_anew()
    {
        using var watch = new GarageWatch(folder);
        var first = watch.Listen(_ => Assert.Fail("told after the end"));
        first.Dispose();
        Write("one.yaml", "car: uno");
        using var second = watch.Listen(told.Add);
        Write("other.yaml", "car: autre");
        Assert.Equal(["other.yaml"], Next());
    }

    private void Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    private static string Slowly(int number) => "car: " + string.Concat(Enumerable.Repeat($"long in the writing {number} ", 12));

    // The longest time between two parts.
    private TimeSpan WriteSlowly(string name, int number)
    {
        var (longest, since) = (TimeSpan.Zero, Stopwatch.StartNew());
        using var stream = new FileStream(Path.Combine(folder, name), FileMode.Create, FileAccess.Write, FileShare.ReadWrite);
        foreach (var part in Slowly(number).Chunk(20))
        {
            stream.Write(System.Text.Encoding.UTF8.GetBytes(part));
            stream.Flush();
            Thread.Sleep(40);
            longest = since.Elapsed > longest ? since.Elapsed : longest;
            since.Restart();
        }

        return longest;
    }

    // A loaded machine takes its time; no test measures it.
    private IReadOnlyCollection<string> Next() => told.TryTake(out var names, TimeSpan.FromSeconds(120)) ? names : ["nothing within 120 s"];
}
