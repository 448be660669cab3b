using Heaveline.Files.Reporting;
using Heaveline.Quantities;
using Heaveline.Tests.Cli;

namespace Heaveline.Tests.Files.Reporting;

public class ReportFolderTests
{
    [Fact]
    public void A_report_that_is_there_is_replaced_only_when_told()
    {
        using var scratch = new Scratch();
        var reports = new ReportFolder(scratch[""]);
        var file = scratch["reports/fern-report.html"];
        Assert.Equal(ReportSaveEnd.Saved, reports.Save("fern-report", "html", [1, 2, 3], replaces: false));
        Assert.Equal(ReportSaveEnd.SameThere, reports.Save("fern-report", "html", [1, 2, 3], replaces: false));
        Assert.Equal(ReportSaveEnd.OtherThere, reports.Save("fern-report", "html", [4, 5, 6], replaces: false));
        Assert.Equal([1, 2, 3], File.ReadAllBytes(file));
        Assert.Equal(ReportSaveEnd.Saved, reports.Save("fern-report", "html", [4, 5, 6], replaces: true));
        Assert.Equal([4, 5, 6], File.ReadAllBytes(file));
        Assert.Equal(ReportSaveEnd.Saved, reports.Save("fern-report", "pdf", [7], replaces: false));
        Assert.Equal(
            ["fern-report.html", "fern-report.pdf"],
            Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(file)!).Select(f => Path.GetFileName(f)).Order());
    }

    [Theory]
    [InlineData("../fern", "html")]
    [InlineData("a/b", "html")]
    [InlineData("", "html")]
    [InlineData(".hidden", "html")]
    [InlineData("-rf", "html")]
    [InlineData("CON", "html")]
    [InlineData("fern", "yaml")]
    [InlineData("fern", "html/x")]
    public void A_name_that_leads_elsewhere_or_is_a_device_is_refused_and_nothing_is_written(string stem, string ending)
    {
        using var scratch = new Scratch();
        Assert.Throws<RefusedValueException>(() => new ReportFolder(scratch[""]).Save(stem, ending, [1], replaces: true));
        Assert.Empty(scratch.Contents);
    }

    [Fact]
    public void A_folder_of_reports_that_is_a_link_is_not_written_through()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need a right of their own there.");
        using var scratch = new Scratch();
        Directory.CreateDirectory(scratch["garage"]);
        Directory.CreateDirectory(scratch["elsewhere"]);
        Directory.CreateSymbolicLink(scratch["garage/reports"], scratch["elsewhere"]);
        Assert.Throws<IOException>(() => new ReportFolder(scratch["garage"]).Save("fern", "html", [1], replaces: true));
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch["elsewhere"]));
    }
}
