using Heaveline.Files.Yaml;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Roads;

namespace Heaveline.Tests.Files;

public sealed class RoadFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("round-top-hump: {height: 75 mm, length: 3.7 m}", 3.7, 0.075)]
    [InlineData("flat-top-hump: {height: 75 mm, plateau: 2.5 m, ramp-up: 1 m}", 4.5, 0.075)]
    [InlineData("plank: {height: 20 mm, length: 200 mm, edge: 15 mm}", 0.2, 0.020)]
    [InlineData("pothole: {depth: 50 mm, length: 600 mm, edge: 60 mm}", 0.6, -0.050)]
    [InlineData("step: {height: -80 mm, edge: 60 mm}", 0.06, -0.040)]
    [InlineData("ramp: {height: 0.2 m, length: 2 m}", 2.0, 0.1)]
    [InlineData("half-sine: {height: 30 mm, length: 1 m}", 1.0, 0.030)]
    [InlineData("versine: {height: 30 mm, length: 1 m}", 1.0, 0.030)]
    public void Every_obstacle_is_read(string words, double length, double middle)
    {
        var road = Read($"road: test\n{words}\ntracks: left\n").Value!;
        Assert.Equal(("test", RoadKind.Obstacle), (road.Name, road.Kind));
        Assert.Equal(length, road.EventEnd!.Value, 1e-12);
        Assert.Equal(middle, road.Left.Height(length / 2.0), 1e-6);
        Assert.Equal(0.0, road.Right.Height(length / 2.0));
    }

    [Fact]
    public void A_measured_profile_says_where_its_obstacle_lies()
    {
        _ = folder.Write("bump.csv", "distance [m], height [mm]\n0, 0\n1, 0\n2, 40\n3, 0\n4, 0\n");
        string Road(string obstacle) => folder.Write("bump.yaml", $"road: bump\nprofile: bump.csv\n{obstacle}\n");

        var road = RoadFile.Load(Road("obstacle: {from: 1 m, to: 3 m}")).Value!;
        Assert.Equal((1.0, 3.0), (road.EventStart!.Value, road.EventEnd!.Value));
        Assert.Null(RoadFile.Load(Road("note: none")).Value!.Event);
        Assert.Contains("at 4 m at the latest", Assert.Single(RoadFile.Load(Road("obstacle: {from: 1 m, to: 5 m}")).Refusals).Message);
        var drawn = new SourceText("test.yaml", "road: test\nversine: {height: 30 mm, length: 1 m}\nobstacle: {from: 1 m, to: 3 m}\n");
        Assert.Contains("belongs to a measured profile", Assert.Single(RoadFile.Read(drawn).Refusals).Message);
    }

    [Theory]
    [InlineData("round-top-hump: {height: 75 mm, length: 1e9 m}", "round top hump length is 1e9 m; it must be between 0 and 1000 m.")]
    [InlineData("ramp: {height: 75 mm, length: 1e6 m}", "ramp length is 1e6 m; it must be between 0 and 1000 m.")]
    [InlineData("sine: {amplitude: 15 mm, wavelength: 900 m, waves: 400}", "length of the waves is 360900 m; it must be at most 100000 m.")]
    public void What_is_longer_than_a_road_is_refused_by_name(string words, string reason)
    {
        var refusal = Assert.Single(RoadFile.Read(new SourceText("test.yaml", $"road: test\n{words}\n")).Refusals);
        Assert.Equal(2, refusal.Line);
        Assert.Contains(reason, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_given_as_a_road_and_a_road_given_as_a_car_are_called_so_in_one_sentence()
    {
        var car = Assert.Single(RoadFile.Read(new SourceText("a.yaml", TextCar.Sound)).Refusals);
        Assert.Contains("this is a car file", car.Message);
        var road = Assert.Single(CarFile.Read(new SourceText("b.yaml", "road: hump\nround-top-hump:\n  height: 75 mm\n  length: 3.7 m\n")).Refusals);
        Assert.Contains("this is a road file", road.Message);
    }

    [Fact]
    public void Every_kind_of_obstacle_has_a_key_of_its_own() => Assert.Equal(
        typeof(Obstacle).Assembly.GetTypes().Count(t => t.IsSubclassOf(typeof(Obstacle))), ObstacleWords.All.Count);

    [Fact]
    public void Waves_are_read()
    {
        var road = Read("road: rolls\nsine: {amplitude: 15 mm, wavelength: 8 m, waves: 4, right-lag: 180 deg}\n").Value!;
        Assert.Equal(40.0, road.End, 1e-9);
        Assert.Equal(0.015, road.Left.Height(18.0), 1e-6);
        Assert.Equal(-0.015, road.Right.Height(18.0), 1e-6);
    }

    [Fact]
    public void A_measured_profile_beside_the_file_is_read_and_takes_its_name()
    {
        folder.Write("lane.csv", "distance [m], height [mm]\n0, 0\n1, 10\n2, 0\n3, 5\n");
        var reading = RoadFile.Load(folder.Write("lane.yaml", "road: my lane\nprofile: lane.csv\n"));
        Assert.Equal("", reading.Format());
        Assert.Equal(("my lane", RoadKind.Measured), (reading.Value!.Name, reading.Value.Kind));
        Assert.StartsWith("my lane, measured", reading.Value.Caption, StringComparison.Ordinal);
        Assert.Equal(0.010, reading.Value.Left.Height(1.0), 1e-12);
        Assert.Equal("lane", RoadFile.Load(Path.Combine(folder.Root, "lane.csv")).Value!.Name);
    }

    [Fact]
    public void What_is_wrong_with_a_profile_is_told_in_the_profile()
    {
        var csv = folder.Write("lane.csv", "distance [m], height [mm]\n0, 0\n1, ten\n2, 0\n3, 5\n");
        var reading = RoadFile.Load(folder.Write("lane.yaml", "road: my lane\nprofile: lane.csv\n"));
        var refusal = Assert.Single(reading.Refusals);
        Assert.Equal((csv, 3, 4), (refusal.File, refusal.Line, refusal.Column));
        Assert.Contains("\n 3 | 1, ten\n", reading.Format(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("profile: ../lane.csv", 2, 10, "profile is ../lane.csv, which leads out of the folder.")]
    [InlineData("profile: none.csv", 2, 10, "profile is none.csv, which is not there.")]
    [InlineData("profile: lane.csv\ntracks: left", 3, 9, "tracks belongs to an obstacle.")]
    [InlineData("versine: {height: 2 m, length: 1 m}", 2, 19, "versine height is 2 m; it must be between -1 and 1 m.")]
    [InlineData(
        "round-top-hump: {height: 900 mm, length: 1 m}",
        2,
        1,
        "round top hump does not fit together: height of the round-top hump is 0.9 m; it must be at most a quarter of its length of 1 m.")]
    [InlineData("plank: {height: 20 mm, length: 200 mm}", 2, 1, "plank has no edge.")]
    [InlineData("versine: {height: 20 mm, length: 1 m}\nstep: {height: 20 mm, edge: 20 mm}", 2, 1, "the file has step and versine; "
        + "it must have one of round-top-hump, flat-top-hump, plank, pothole, step, ramp, half-sine, versine, sine, profile.")]
    [InlineData(
        "note: nothing",
        1,
        1,
        "the file has none of round-top-hump, flat-top-hump, plank, pothole, step, ramp, half-sine, versine, sine, profile; it must have one.")]
    [InlineData("sine: {amplitude: 15 mm, wavelength: 8 m, waves: 0}", 2, 50, "sine waves is 0; it must be between 0.25 and 10000.")]
    public void A_slip_is_refused_in_its_place(string words, int line, int column, string message)
    {
        var reading = RoadFile.Load(folder.Write("r.yaml", $"road: test\n{words}\n"));
        Assert.Null(reading.Value);
        var refusal = Assert.Single(reading.Refusals);
        Assert.Equal((line, column, message), (refusal.Line, refusal.Column, refusal.Message));
    }

    [Fact]
    public void Named_roads_are_found_by_their_short_names()
    {
        Assert.Equal(
            [
                "kerb-down",
                "long-wave",
                "plank",
                "plank-left",
                "pothole-left",
                "short-bump",
                "sine-heave",
                "sine-pitch",
                "sine-roll",
                "speed-table",
                "village-hump",
                "village-hump-100",
            ],
            NamedRoads.All.Keys);
        Assert.Equal("village hump", NamedRoads.Find("village-hump").Value!.Name);
        Assert.All(NamedRoads.All.Values, road => Assert.False(road.HasJump));
    }

    [Fact]
    public void A_file_is_found_by_its_path_and_a_misspelt_name_is_refused()
    {
        Assert.Equal("test", NamedRoads.Find(folder.Write("r.yaml", "road: test\nversine: {height: 2 cm, length: 1 m}\n")).Value!.Name);
        var refusal = Assert.Single(NamedRoads.Find("vilage-hump").Refusals);
        Assert.Equal("\"vilage-hump\" is no named road and no file.", refusal.Message);
        Assert.StartsWith("Did you mean village-hump? Named roads: kerb-down,", refusal.Advice, StringComparison.Ordinal);
    }

    private static Reading<Road> Read(string text)
    {
        var reading = RoadFile.Read(new SourceText("test.yaml", text));
        Assert.Equal("", reading.Format());
        return reading;
    }
}
