using Heaveline.Files;
using Heaveline.Files.Roads;
using Heaveline.Roads;

namespace Heaveline.Tests.Files;

public class MeasuredProfileFileTests
{
    [Fact]
    public void Two_tracks_are_read_in_their_units()
    {
        var reading = MeasuredProfileFile.Read(new SourceText(
            "yard.csv", "# levelled with a hose\r\ndistance [ft],right [mm] , left [in]\r\n0,10,0\r\n1,20,1\r\n\r\n2,20,1\r\n3,30,2\r\n"));
        Assert.Empty(reading.Refusals);
        var road = Assert.IsType<Road>(reading.Value);
        Assert.Equal("yard", road.Name);
        Assert.Equal(RoadKind.Measured, road.Kind);
        Assert.Equal(3.0 * 0.3048, road.End, 1e-15);
        Assert.Equal(0.010, road.Right.Height(0.3048) - road.Right.StartHeight, 1e-15);
        Assert.Equal(0.0254, road.Left.Height(0.3048) - road.Left.StartHeight, 1e-15);
        Assert.Equal(0.010, road.Right.StartHeight - road.Left.StartHeight, 1e-15);
    }

    [Fact]
    public void A_long_road_is_read_in_a_few_times_its_own_size()
    {
        var text = "distance [m],left [mm],right [mm]\n" + string.Concat(
            Enumerable.Range(0, 100_000).Select(i => FormattableString.Invariant($"{0.01 * i:F4},{i % 13}.123456,{i % 11}.654321\n")));
        var source = new SourceText("lane.csv", text);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.NotNull(MeasuredProfileFile.Read(source).Value);
        // All that is asked for on the way, most of it given back: pieces of two tracks, knots, slopes, columns.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 7L * text.Length);
    }

    [Fact]
    public void Places_are_told_past_blank_lines_and_comments()
    {
        var lines = Enumerable.Range(0, 5000).SelectMany(i => i % 7 == 3
            ? new[] { "", "# here", FormattableString.Invariant($"{0.1 * i:F1},0") }
            : [FormattableString.Invariant($"{0.1 * i:F1},{(i == 4001 ? 99999 : 0)}")]).Prepend("distance [m],height [mm]").ToList();
        var refusal = Assert.Single(MeasuredProfileFile.Read(new SourceText("lane.csv", string.Join("\r\n", lines))).Refusals);
        Assert.Equal((lines.FindIndex(line => line.EndsWith("99999", StringComparison.Ordinal)) + 1, 7), (refusal.Line, refusal.Column));
    }

    [Fact]
    public void Reading_stops_when_it_is_told_to()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var text = "distance [m],height [mm]\n" + string.Concat(Enumerable.Range(0, 40_000).Select(i => $"{i},0\n"));
        Assert.Throws<OperationCanceledException>(() => MeasuredProfileFile.Read(new SourceText("lane.csv", text), stop: stop.Token));
    }

    [Fact]
    public void Reading_stops_after_some_hundred_refusals_and_says_so()
    {
        var text = "distance [m], left [mm], right [mm]\n" + string.Concat(Enumerable.Repeat("letters, and, more\n", 200_000));
        var source = new SourceText("yard.csv", text);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var reading = MeasuredProfileFile.Read(source);
        // Far below the text's own 8 MB: the rest is not looked at.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 2_000_000);
        Assert.Equal(301, reading.Refusals.Count);
        Assert.StartsWith("reading stopped here, after 300 refusals;", reading.Refusals[0].Message, StringComparison.Ordinal);
        Assert.Equal(101, reading.Refusals[0].Line);
    }

    [Fact]
    public void Heights_that_are_all_out_of_range_are_refused_so_far_too()
    {
        var points = Enumerable.Range(0, 5000).Select(i => FormattableString.Invariant($"{0.1 * i:0.0}, {(i % 2 == 0 ? 0 : 20)}\n"));
        var reading = MeasuredProfileFile.Read(new SourceText("yard.csv", "distance [m], height [m]\n" + string.Concat(points)));
        Assert.Equal(301, reading.Refusals.Count);
    }

    [Fact]
    public void A_line_that_is_no_header_is_refused_once_however_long()
    {
        var reading = MeasuredProfileFile.Read(new SourceText("yard.csv", string.Concat(Enumerable.Repeat("ab,", 1_000_000))));
        Assert.Equal("the header has 3000000 characters; it must have at most 1000.", Assert.Single(reading.Refusals).Message);
    }

    [Fact]
    public void Distances_in_the_wrong_unit_are_refused_by_their_length()
    {
        var reading = MeasuredProfileFile.Read(new SourceText("yard.csv", "distance [km], height [mm]\n0, 0\n500, 1\n1000, 0\n1500, 1\n"));
        Assert.StartsWith("distance 1500 km is 1500 km from the first one; it must be within 1000 km", Assert.Single(reading.Refusals).Message);
    }

    [Fact]
    public void A_long_road_is_read_in_a_few_times_the_room_of_its_text()
    {
        var text = "distance [m], left [mm], right [mm]\n" + string.Concat(
            Enumerable.Range(0, 100_000).Select(i => FormattableString.Invariant($"{0.01 * i:0.00}, {i % 7}.25, {i % 5}.125\n")));
        var source = new SourceText("yard.csv", text);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.NotNull(MeasuredProfileFile.Read(source).Value);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 32L * text.Length);
    }

    [Fact]
    public void One_height_is_seen_by_both_wheels()
    {
        var road = MeasuredProfileFile.Read(new SourceText("lane.csv", "distance [km], height [cm]\n0, 0\n0.001, 1\n0.002, 0\n0.003, -1e0")).Value;
        Assert.NotNull(road);
        Assert.Same(road.Left, road.Right);
        Assert.Equal(0.01, road.Left.Height(1.0), 1e-12);
        Assert.Equal(-0.01, road.Right.EndHeight, 1e-12);
    }

    [Fact]
    public void Everything_wrong_is_refused_at_once_with_its_place()
    {
        const string text = "distance [m], left [mm], right [mm]\n" +
            "0.0, 1.0, 1.0\n" +
            "0.1, , 1.0\n" +
            "0.1, 2.0, NaN\n" +
            "0.3, 2.0\n" +
            "0.2, 3.0, 4.0\n" +
            "0.1, 3.0, 4.0\n" +
            "0.5, 3.0, 10002\n" +
            "0.6, 3.0, ?\n";
        var reading = MeasuredProfileFile.Read(new SourceText("yard.csv", text));
        Assert.Null(reading.Value);
        Assert.Equal(
            [
                "yard.csv:3:5:1 left is empty; it must be a number.",
                "yard.csv:4:1:3 distance 0.1 m repeats the distance before it; it must be above 0.1 m.",
                "yard.csv:4:11:3 right is NaN; it must be a finite number.",
                "yard.csv:5:1:8 the line has 2 cells; it must have 3, one for each column.",
                "yard.csv:7:1:3 distance 0.1 m goes backwards; it must be above 0.2 m.",
                "yard.csv:8:11:5 right is 10002 mm, 10001 mm from the first one; it must be within 10000 mm of it.",
                "yard.csv:9:11:1 right is ?; it must be a finite number.",
            ],
            reading.Refusals.Select(Words));
        Assert.All(reading.Refusals, r => Assert.NotEmpty(r.Advice));
    }

    [Theory]
    [InlineData("distance, left [mm], right [mm]", "r.csv:1:1:8 column 'distance' has no unit; it must have one in square brackets.")]
    [InlineData("distance [m], left [yd], right [mm]", "r.csv:1:15:9 unit of column 'left' is 'yd'; it must be m, mm, cm, km, in or ft.")]
    [InlineData("u [m], height [mm]", "r.csv:1:1:5 column 1 is named 'u'; it must be distance.")]
    [InlineData("distance [m], z [mm]", "r.csv:1:15:6 column 2 is named 'z'; it must be left, right or height.")]
    [InlineData("distance [m], left [mm], left [mm]", "r.csv:1:26:9 column 'left' stands twice; it must stand once.")]
    [InlineData(
        "distance [m], left [mm]", "r.csv:1:1:23 the columns are distance, left; they must be distance and height, or distance, left and right.")]
    [InlineData("distance [m]; left [mm]", "r.csv:1:13:1 the columns are separated by semicolons; they must be separated by commas.")]
    public void A_header_that_cannot_be_told_is_refused(string header, string expected)
    {
        var reading = MeasuredProfileFile.Read(new SourceText("r.csv", header + "\n0,0\n1,0\n2,0\n3,0\n"));
        Assert.Null(reading.Value);
        Assert.Equal(expected, Words(Assert.Single(reading.Refusals)));
    }

    [Fact]
    public void Too_few_points_and_no_header_are_refused()
    {
        var few = MeasuredProfileFile.Read(new SourceText("r.csv", "distance [m], height [mm]\n0,0\n1,0\n2,0\n"));
        Assert.Contains("has 3 points; it must have at least 4", Assert.Single(few.Refusals).Message, StringComparison.Ordinal);
        var none = MeasuredProfileFile.Read(new SourceText("r.csv", "\n# nothing\n"));
        Assert.Contains("no header", Assert.Single(none.Refusals).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gap_of_a_metre_is_refused_and_a_shorter_one_is_doubtful_each_with_its_place()
    {
        var wide = MeasuredProfileFile.Read(new SourceText("r.csv", "distance [m], height [mm]\n0,0\n0.1,0\n0.2,0\n0.3,2\n4.9,0\n5,0\n5.1,0\n"));
        Assert.Null(wide.Value);
        Assert.Equal(
            "r.csv:6:1:3 nothing was measured from 0.3 to 4.9 m, 46 times the usual spacing of 100 mm; "
                + "waves shorter than 9.2 m cannot be seen there.",
            Words(Assert.Single(wide.Refusals)));
        var narrow = MeasuredProfileFile.Read(new SourceText("r.csv", "distance [m], height [mm]\n0,0\n0.1,0\n0.2,0\n0.3,2\n0.8,0\n0.9,0\n1,0\n"));
        Assert.NotNull(narrow.Value);
        Assert.Contains("no point from 0.3 to 0.8 m", narrow.Value.Caption, StringComparison.Ordinal);
        Assert.Equal((6, 1), (Assert.Single(narrow.Warnings).Line, narrow.Warnings[0].Column));
    }

    [Fact]
    public void A_climb_of_more_than_ten_metres_is_a_road_less_its_slope()
    {
        var rows = Enumerable.Range(0, 3401).Select(i => FormattableString.Invariant($"{0.1 * i:F1}, {0.003 * i:F4}"));
        var reading = MeasuredProfileFile.Read(new SourceText("hill.csv", "distance [m], height [m]\n" + string.Join('\n', rows)));
        Assert.Empty(reading.Refusals);
        Assert.EndsWith("less its slope of 3 %", reading.Value!.Caption, StringComparison.Ordinal);
        Assert.Equal(0.0, reading.Value.Left.EndHeight, 1e-9);
    }

    [Fact]
    public void Of_a_slip_in_thousands_of_lines_twenty_are_printed_and_the_others_counted()
    {
        // Millimetres under a header that says metres.
        var rows = Enumerable.Range(0, 3000).Select(i => FormattableString.Invariant($"{0.1 * i:F1}, {(i % 2 == 0 ? 0 : 25)}"));
        var text = "distance [m], height [m]\n" + string.Join('\n', rows);
        var reading = MeasuredProfileFile.Read(new SourceText("r.csv", text));
        Assert.Null(reading.Value);
        Assert.Equal(301, reading.Refusals.Count);
        Assert.EndsWith($"… and {reading.Refusals.Count - 20} more refused.", reading.Format(), StringComparison.Ordinal);
        Assert.Equal(20, reading.Format().Split("r.csv:").Length - 1);
    }

    private static string Words(Refusal refusal) =>
        FormattableString.Invariant($"{refusal.File}:{refusal.Line}:{refusal.Column}:{refusal.Length} {refusal.Message}");
}
