using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Tests.Files;
using Heaveline.Tests.Studies;
using Heaveline.Web.Pages.Drives;

namespace Heaveline.Tests.Web;

public class DriveNotebookTests
{
    [Fact]
    public void A_value_that_is_taken_out_again_leaves_the_text_as_it_was()
    {
        using var folder = new TemporaryFolder();
        var garage = new Garage(folder.Root);
        var drive = garage.Drives.Begin("Lane", "a.csv", "1,2,3\n"u8.ToArray()).Drive!;
        var first = Read(garage, drive);
        Assert.Equal("", DriveNotebook.Write(garage, first, ["phone", "behind-front-axle"], "1.45 m ± 5 cm"));
        var then = Read(garage, drive);
        Assert.Equal("1.45 m ± 5 cm", then.At("phone", "behind-front-axle")!.Text);
        Assert.Equal(1.45, then.Sheet.Phone!.BehindFrontAxle.Si);
        Assert.Equal("", DriveNotebook.Write(garage, then, ["phone", "behind-front-axle"], " "));
        Assert.Null(Read(garage, drive).Sheet.Phone);
        Assert.Equal("", DriveNotebook.Write(garage, Read(garage, drive), ["phone", "left"], ""));
    }

    // An interval of 90 % is ±1.6449 standard deviations wide, one that holds 19 times out of 20 ±2 [GUM, 6.2 and Table G.1].
    [Theory]
    [InlineData("1.45 m ± 5 cm", 0.5 * 0.05 * 1.6449)]
    [InlineData("1.45 m", 0.05)]
    public void A_phones_place_means_the_same_written_down_and_typed(string place, double spread)
    {
        using var folder = new TemporaryFolder();
        var garage = new Garage(folder.Root);
        var drive = garage.Drives.Begin("Lane", "a.csv", "1,2,3\n"u8.ToArray()).Drive!;
        Assert.Equal("", DriveNotebook.Write(garage, Read(garage, drive), ["phone", "behind-front-axle"], place));
        var phone = Read(garage, drive).Settings.Phone!;
        Assert.Equal(DriveChoices.PhoneOf(new AskedReader(Given.Nothing, new KnownThings()), $"{place} behind front axle"), phone);
        Assert.Equal(spread, phone.BehindFrontAxleSpread, 1e-5);
    }

    [Fact]
    public void What_cannot_be_is_not_saved_and_a_file_changed_meanwhile_is_not_written_over()
    {
        using var folder = new TemporaryFolder();
        var garage = new Garage(folder.Root);
        var drive = garage.Drives.Begin("Lane", "a.csv", "1,2,3\n"u8.ToArray()).Drive!;
        var read = Read(garage, drive);
        Assert.Contains("unit", DriveNotebook.Write(garage, read, ["pressures", "front"], "2.3"), StringComparison.Ordinal);
        Assert.Equal(read.Text, Read(garage, drive).Text);
        Assert.Equal("", DriveNotebook.Write(garage, read, ["note"], "windy"));
        Assert.Contains("changed meanwhile", DriveNotebook.Write(garage, read, ["note"], "calm"), StringComparison.Ordinal);
        Assert.Equal("windy", Read(garage, drive).Sheet.Note);
    }

    private static DriveSource Read(Garage garage, string drive) => DriveSource.Of(garage, drive).Drive!;
}
