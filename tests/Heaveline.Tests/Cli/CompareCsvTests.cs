namespace Heaveline.Tests.Cli;

public class CompareCsvTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";
    private const string Cured = "examples/garage/fern-saloon-cured.yaml";

    [Fact]
    public void Compare_writes_the_traces_of_every_car_over_one_clock()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("compare", Saloon, Cured, "--csv", scratch["both.csv"]).Code);
        Assert.Equal(0, Spoken.Of("pass", Saloon, "--csv", scratch["one.csv"]).Code);
        string[] both = File.ReadAllLines(scratch["both.csv"]);
        string[] one = File.ReadAllLines(scratch["one.csv"]);
        Assert.StartsWith("time [s],Fern saloon: heave [mm],", both[0]);
        Assert.Contains("Fern saloon, cured: heave [mm]", both[0]);
        // The first car's heave, sample by sample, is what it is alone.
        for (var k = 1; k < Math.Min(both.Length, one.Length); k += 37)
        {
            Assert.Equal(Number(one[k], 1), Number(both[k], 1), 1e-3);
        }
    }

    [Fact]
    public void Traces_of_several_speeds_are_refused()
    {
        var said = Spoken.Of("compare", Saloon, Cured, "--speed", "30 km/h, 60 km/h", "--csv", "both.csv");
        Assert.Equal(2, said.Code);
        Assert.Contains("one speed at a time", said.Remarks);
    }

    private static double Number(string line, int column) => double.Parse(line.Split(',')[column], System.Globalization.CultureInfo.InvariantCulture);
}
