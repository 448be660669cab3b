using System.Net;
using System.Text.RegularExpressions;
using Heaveline.Answers;
using Heaveline.Files.Drives;
using Heaveline.Files.Garages;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>Reports of two planted drives along Larch Lane, which lie in a garage or are logs alone.</summary>
public sealed class DriveReportTests : IDisposable
{
    private const string Wheelbase = "wheelbase: 2.70 m\n";
    private readonly Scratch scratch = new();

    public DriveReportTests()
    {
        foreach (var name in new[] { "fern-saloon.yaml", "fern-saloon-cured.yaml" })
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", name), scratch[name]);
        }

        Put("before", $"drive: Lane before\n{Wheelbase}", LarchLane.Before.Log);
        Put("after", $"drive: Lane after\n{Wheelbase}after: before\nsame: [load, fuel]\n", LarchLane.After.Log);
    }

    private string Car => scratch["fern-saloon.yaml"];

    private string Before => Path.Combine(scratch["drives"], "before");

    private string After => Path.Combine(scratch["drives"], "after");

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Sentences_and_numbers_are_those_that_the_commands_print()
    {
        var said = Spoken.Of("report", Car, "--drive", After, "--parts", "drive,prove", "--out", scratch["r.html"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var page = PageText.Plain(File.ReadAllText(scratch["r.html"]));
        var drives = new Garage(Path.GetDirectoryName(Car)!).Drives;
        var logs = new[] { "before", "after" }.Select(name => drives.Log(name, [], TestContext.Current.CancellationToken).Log!).ToArray();
        var settings = new Heaveline.Drives.Events.EventSettings { Wheelbase = 2.7 };
        var drive = DriveStudy.Run(new DriveAsked { Log = logs[1], Settings = settings });
        var proof = ProveStudy.Run(new ProveAsked
        {
            Before = logs[0], After = logs[1], OfBefore = settings, OfAfter = settings, Same = ["load", "fuel"], WhatChanged = true,
        });
        Assert.All(
            drive.Head.Concat(drive.Sentences.Where(s => !s.Id.StartsWith("site-", StringComparison.Ordinal))).Concat(proof.Head),
            s => Assert.Contains(s.Text, page, StringComparison.Ordinal));

        // One place has one name: the sites of the drive after say which of the drive before they are, above the first number.
        var names = new SiteNames(proof.Matches, IsAfter: true);
        Assert.Contains(proof.Matches.All, m => m.After.Name != m.Name && names.Of(m.After.Name) == $"{m.After.Name} ({m.Name} of the drive before)");
        Assert.All(
            EventWords.Of(names.Of(drive.Events!), DriveAdvice.Report), s => Assert.Contains(s.Text, page, StringComparison.Ordinal));
        var caution = page.IndexOf(names.Caution(drive.Events!)!, StringComparison.Ordinal);
        Assert.InRange(caution, 0, page.IndexOf("Sites with one bump", StringComparison.Ordinal) is > 0 and var once ? once : page.Length);
        Assert.InRange(caution, 0, page.IndexOf("Site 1, bump", StringComparison.Ordinal) is > 0 and var first ? first : page.Length);

        // So do its figures: no panel bears the number of another site of the text.
        string[] panels = [.. Panels(drive with { Events = names.Of(drive.Events!) })], others = [.. Panels(drive).Except(panels)];
        Assert.Contains(panels, title => title.Contains(" of the drive before), ", StringComparison.Ordinal));
        var figures = WebUtility.HtmlDecode(string.Concat(
            Regex.Matches(File.ReadAllText(scratch["r.html"]), "<svg .*?</svg>", RegexOptions.Singleline).Select(m => m.Value)));
        Assert.All(panels, title => Assert.Contains($">{title}<", figures, StringComparison.Ordinal));
        Assert.NotEmpty(others);
        Assert.All(others, title => Assert.DoesNotContain($">{title}<", figures, StringComparison.Ordinal));
        var opening = Assert.Single(proof.Opening);
        string[] lines = [.. proof.Lines];
        Assert.Single(lines, opening);
        Assert.InRange(Array.IndexOf(lines, opening), 1, Array.IndexOf(lines, ""));
        Assert.All(proof.Sentences.Where(s => s.Id == "power"), s => Assert.Contains(s.Text, page, StringComparison.Ordinal));

        // The cars are those of the drives, as on the page of the drive: one report does not say two things of one car.
        var before = DriveStudy.Run(new DriveAsked { Log = logs[0], Settings = settings });
        var changed = ProveStudy.Of(proof.Asked, ProvedDrive.Of(before), ProvedDrive.Of(drive), TestContext.Current.CancellationToken);
        Assert.Contains(changed.Sentences, s => s.Id.StartsWith("what-changed", StringComparison.Ordinal));
        Assert.All(changed.Sentences.Where(s => s.Id != "looks"), s => Assert.Contains(s.Text, page, StringComparison.Ordinal));
        Assert.Contains("Not said to be the same in both drives: pressures, temperature, tyres, phone.", page, StringComparison.Ordinal);
        Assert.All(drive.Closing, safety => Assert.Contains(safety, page, StringComparison.Ordinal));

        // Every row of the table that decides, and of a bump's own table.
        Assert.All(proof.Tables[0].Rows.Concat(FloorTable.Of(drive.Comfort!).Rows), row => Assert.Contains(Row(row), page, StringComparison.Ordinal));
        Assert.All(
            EventTable.Of(drive.Events!)[0].Rows.Where(r => r.Key.StartsWith("settling-rms-pitch", StringComparison.Ordinal)),
            row => Assert.Contains(Row(row), page, StringComparison.Ordinal));
        Assert.Contains("The drive: Lane after", page, StringComparison.Ordinal);
        Assert.Contains("Before and after: Lane before, then Lane after", page, StringComparison.Ordinal);
        Assert.DoesNotContain("The drive: Lane before", page, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Panels(DriveAnswer drive) =>
        drive.Figure(DriveAnswer.Overlay).Panels.OfType<Heaveline.Figures.ChartPanel>().Select(panel => panel.Title);

    [Fact]
    public void The_line_and_the_digests_of_a_report_say_which_logs_make_it_again()
    {
        Assert.Equal(0, Spoken.Of("report", Car, "--drive", Before, "--drive", After, "--parts", "prove", "--out", scratch["r.html"]).Code);
        var page = File.ReadAllText(scratch["r.html"]);
        Assert.DoesNotContain(scratch["drives"], page, StringComparison.Ordinal);
        Assert.Contains("--drive drives/before --drive drives/after --parts prove", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        foreach (var log in new[] { "before", "after" })
        {
            var bytes = File.ReadAllBytes(Path.Combine(scratch["drives"], log, "log.csv"));
            Assert.Contains(
                $"drives/{log}/log.csv a log, not printed here {Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes))}",
                PageText.Plain(page), StringComparison.Ordinal);
            Assert.Contains($"drive: Lane {log}\n{Wheelbase}", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        }

        // The same files under the same names elsewhere.
        Assert.Equal(0, Spoken.Of("report", Car, "--drive", Before, "--drive", After, "--parts", "prove", "--out", scratch["r.html"]).Code);
        Assert.Equal(page, File.ReadAllText(scratch["r.html"]));
    }

    [Fact]
    public void Logs_alone_are_driven_by_the_cars_of_the_report_and_the_change_between_them_is_forecast()
    {
        var said = Spoken.Of(
            "report", Car, scratch["fern-saloon-cured.yaml"], "--load", LarchLane.Load, "--drive", Path.Combine(Before, "log.csv"), "--drive",
            Path.Combine(After, "log.csv"), "--same", "all", "--forecast", "--parts", "drive,prove", "--out", scratch["r.html"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var page = PageText.Plain(File.ReadAllText(scratch["r.html"]));
        Assert.Matches("The forecast for Fern saloon, cured was (not )?kept: said", page);
        Assert.DoesNotContain("Not said to be the same", page, StringComparison.Ordinal);
        Assert.Contains("drives/after/log.csv a log, not printed here", page, StringComparison.Ordinal);
        Assert.DoesNotContain(Path.GetDirectoryName(Car)!, page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "drive", "nowhere", "no drive of a garage, and no file or folder of a log")]
    [InlineData(1, "drive", "empty", "the drive holds no log")]
    [InlineData(1, "drive", "bad", "after is missing, which is no drive beside this one")]
    [InlineData(1, "drive", "rubbish", "log.csv: ")]
    [InlineData(2, "prove", "before", "needs two drives")]
    [InlineData(2, "car", "before", "no part is of it")]
    [InlineData(2, "drive", "", "The part drive needs a drive.")]
    public void What_cannot_be_is_refused_by_name_and_nothing_is_written(int code, string part, string drive, string why)
    {
        Put("empty", "drive: Nothing there\n", null);
        Put("bad", "drive: Follows nothing\nafter: missing\n", null);
        Put("rubbish", "drive: No log\n", null);
        File.WriteAllText(Path.Combine(scratch["drives"], "rubbish", "log.csv"), "a letter to a friend\nwithout a number\n");
        var said = Spoken.Of(
        [
            "report", Car, .. drive.Length > 0 ? ["--drive", Path.Combine(scratch["drives"], drive)] : Array.Empty<string>(), "--parts", part,
            "--out", scratch["r.html"],
        ]);
        Assert.Equal(code, said.Code);
        Assert.Contains(why, said.Remarks, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch["r.html"]));
    }

    [Fact]
    public void What_drives_are_said_to_share_is_not_believed_where_what_is_written_down_with_them_differs()
    {
        const string Driven = "car: ../../fern-saloon.yaml\npressures: {front: 2.3 bar, rear: 2.1 bar}\n";
        Put("light", $"drive: Lane light\n{Driven}load: driver\n", LarchLane.Before.Log);
        Put(
            "heavy", $"drive: Lane heavy\n{Driven.Replace("2.1", "2.6", StringComparison.Ordinal)}load: four up with luggage\nafter: light\n"
            + "same: [load, pressures, fuel]\n", LarchLane.After.Log);
        var (light, heavy) = (Path.Combine(scratch["drives"], "light"), Path.Combine(scratch["drives"], "heavy"));

        // Given the wrong way round, too, and with the car of neither.
        File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "drover-van.yaml"), scratch["drover-van.yaml"]);
        var said = Spoken.Of(
            "report", scratch["drover-van.yaml"], "--drive", heavy, "--drive", light, "--parts", "prove", "--out", scratch["r.html"]);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var page = PageText.Plain(File.ReadAllText(scratch["r.html"]));
        Assert.Contains("Turned round: Lane heavy is written down as driven after Lane light", page, StringComparison.Ordinal);
        Assert.Contains("Before and after: Lane light, then Lane heavy", page, StringComparison.Ordinal);
        Assert.Contains("load; Lane light was driven driver, Lane heavy four up with luggage. That it was said", page, StringComparison.Ordinal);
        Assert.Contains("pressures; rear 2.10 and 2.60 bar, Lane light before Lane heavy. That it was said", page, StringComparison.Ordinal);
        Assert.Contains(
            "Not said to be the same in both drives: load, pressures, temperature, tyres, phone.", page, StringComparison.Ordinal);
        Assert.Contains("Driven, as written down: Fern saloon. The report is of another car: Drover van.", page, StringComparison.Ordinal);

        // Nor does the half page in front say of the van what was measured on the saloon.
        said = Spoken.Of(
            "report", scratch["drover-van.yaml"], "--drive", heavy, "--drive", light, "--parts", "finding,prove", "--out", scratch["r.html"]);
        Assert.Equal(0, said.Code);
        page = PageText.Plain(File.ReadAllText(scratch["r.html"]));
        Assert.DoesNotContain("Measured on the road, before the change and after it", page, StringComparison.Ordinal);
        Assert.Contains("in Lane light and Lane heavy, was measured on another car", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_is_not_forecast_between_drives_of_two_loads()
    {
        Put("light", "drive: Lane light\ncar: ../../fern-saloon.yaml\nload: driver\n", null);
        Put("heavy", "drive: Lane heavy\ncar: ../../fern-saloon-cured.yaml\nload: four up with luggage\nafter: light\n", null);
        var said = Spoken.Of(
            "report", Car, "--drive", Path.Combine(scratch["drives"], "heavy"), "--parts", "prove", "--forecast", "--out", scratch["r.html"]);
        Assert.Equal(1, said.Code);
        Assert.Contains("not to be judged; the drive before was driven driver", said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Drives_that_follow_each_other_in_a_ring_are_refused_by_name()
    {
        Put("a", "drive: A\nafter: b\n", null);
        Put("b", "drive: B\nafter: c\n", null);
        Put("c", "drive: C\nafter: a\n", null);
        Put("d", "drive: D\nafter: a\n", null);
        foreach (var name in new[] { "a", "b", "c" })
        {
            var said = Spoken.Of("check", Path.Combine(scratch["drives"], name, DriveFile.FileName));
            Assert.Equal(1, said.Code);
            Assert.Contains($"was itself driven after {name}: they follow each other in a ring", said.Remarks, StringComparison.Ordinal);
        }

        Assert.Equal(0, Spoken.Of("check", Path.Combine(scratch["drives"], "d", DriveFile.FileName)).Code);
        var report = Spoken.Of("report", Car, "--drive", Path.Combine(scratch["drives"], "a"), "--out", scratch["r.html"]);
        Assert.Equal(1, report.Code);
        Assert.Contains("in a ring", report.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void No_log_is_read_where_no_part_is_of_it()
    {
        var garage = new Garage(Path.GetDirectoryName(Car)!);
        var read = new List<string>();
        var found = NamedDrives.Find(garage, "after", name => name).Value!;
        RecordedDrive Watched(RecordedDrive drive) => drive with
        {
            Before = drive.Before is { } before ? Watched(before) : null,
            Read = stop =>
            {
                read.Add(drive.Path);
                return drive.Read(stop);
            },
        };
        var asked = Press.ReportSamples.Of(Figures.DrawnCars.Saloon, PartKind.Cost) with { Drives = [Watched(found)] };
        Report.From(asked);
        Assert.Empty(read);
        var report = Report.From(asked with { Parts = [PartKind.Prove] });
        Assert.Equal(["drives/before", "drives/after"], read);
        Assert.Equal(["drives/before/log.csv", "drives/after/log.csv"], report.Logs.Select(l => l.Name));
        Assert.All(report.Parts[0].Sources, s => Assert.Contains(s, report.Sources));
    }

    [Fact]
    public void A_drive_is_told_in_a_page_that_needs_nothing_and_is_read_by_everybody()
    {
        Assert.Equal(0, Spoken.Of("report", Car, "--drive", After, "--parts", "finding,drive,prove", "--out", scratch["r.html"]).Code);
        var page = File.ReadAllText(scratch["r.html"]);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        var figures = Regex.Matches(page, "<svg [^>]*>").Select(m => m.Value).ToList();
        Assert.True(figures.Count >= 8);
        Assert.All(figures, figure => Assert.Matches("role=\"img\" aria-label=\"[^\"]{40,}\"", figure));
        var ids = Regex.Matches(page, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());

        // What was measured is not called computed, and stands in the half page before the numbers.
        var text = PageText.Plain(page);
        Assert.DoesNotContain("Everything here is computed", text, StringComparison.Ordinal);
        Assert.DoesNotContain("none of it measured on a road", text, StringComparison.Ordinal);
        Assert.Contains("What is said of the drives is read off their logs", text, StringComparison.Ordinal);
        Assert.Matches("Measured on the road, [^.:]+, before the change and after it: [^.]+ over [0-9]+ bumps .*? from [0-9]+ to [0-9]+ km/h", text);
        Assert.All(["iso2631-1", "iso8041-1", "identification"], key => Assert.Contains($"id=\"source-{key}\"", page, StringComparison.Ordinal));
        Assert.All(
            ["'plan'", "'ties'", "drive.yaml of", "(drive.yaml)", "say by --same"],
            word => Assert.DoesNotContain(word, text, StringComparison.Ordinal));

        // The planted place is about 0.5° N, 30° W; nothing of it is printed.
        Assert.DoesNotContain("-30.0", PageText.Plain(page), StringComparison.Ordinal);
        Assert.DoesNotContain("29.99", PageText.Plain(page), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_parts_named_a_drive_brings_its_own()
    {
        var finder = new Heaveline.Web.Serving.GarageView(new Heaveline.Web.Serving.ServeOptions { Garage = Path.GetDirectoryName(Car)! });
        string Parts(params string[] drives) => string.Join(
            ',',
            ReportStudy.Question.Read(
                new Given([("car", "fern-saloon"), .. drives.Select(d => ("drive", (string?)d)), ("out", "r.html")]), finder).Asked!.Parts)
            .ToLowerInvariant();
        Assert.Equal("finding,car,modes,pass,why,doubt,ride,cost", Parts());
        Assert.Equal("finding,car,modes,pass,why,doubt,ride,cost,drive", Parts("before"));
        Assert.Equal("finding,car,modes,pass,why,doubt,ride,cost,drive,prove", Parts("after"));
    }

    private void Put(string name, string sheet, Heaveline.Drives.Log? log)
    {
        var folder = Directory.CreateDirectory(Path.Combine(scratch["drives"], name)).FullName;
        File.WriteAllText(Path.Combine(folder, DriveFile.FileName), sheet);
        if (log is not null)
        {
            File.WriteAllText(Path.Combine(folder, "log.csv"), LaneWriter.Whole(log));
        }
    }

    // A row as a reader sees it, blanks between its cells.
    private static string Row(FactRow row) => string.Join(
        ' ',
        [row.Label.Trim(), row.Unit, .. row.Values.Select(v => v is { } x ? Heaveline.Quantities.Numeral.Of(x, row.Format) : "–")]);
}
