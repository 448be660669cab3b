using Heaveline.Ordeal;

namespace Heaveline.Tests.Files;

/// <summary>A few rounds of the long ordeals of the bench: bench/Heaveline.Ordeal kills and fuzz.</summary>
public class OrdealTests
{
    [Fact]
    public void A_program_that_is_killed_while_it_writes_leaves_whole_files_and_a_whole_history()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Files that are open cannot be taken away there, and the rounds need that.");
        var folder = Directory.CreateTempSubdirectory("heaveline-ordeal-").FullName;
        try
        {
            var (faults, _, writes) = Kills.Of(rounds: 8, seed: 1, folder);
            Assert.Empty(faults);
            Assert.True(writes > 0, "Every round was killed before it had written anything.");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void A_torn_file_would_be_seen()
    {
        var whole = Contents.Csv(7);
        Assert.Equal(7, Contents.NumberOfCsv(whole));
        Assert.Null(Contents.NumberOfCsv(whole[..^1]));
        Assert.Null(Contents.NumberOfCsv([.. whole[..500], .. Contents.Csv(8)[500..]]));
        Assert.Null(Contents.NumberOfCar(System.Text.Encoding.UTF8.GetBytes(Contents.Car(3)[..^2])));
    }

    [Fact]
    public void Spoilt_examples_are_read_or_refused_in_words_soon_and_in_bounded_memory()
    {
        var tally = Fuzz.Of(inputs: 600, seed: 1);
        Assert.Empty(tally.Faults);
        Assert.InRange(tally.Accepted, 30, 570);
    }

    [Fact]
    public void Spoilt_logs_are_refused_in_words_or_come_out_as_drives()
    {
        var tally = LogFuzz.Of(300, 1);
        Assert.Empty(tally.Faults);
        Assert.InRange(tally.Accepted, 20, 290);
    }
}
