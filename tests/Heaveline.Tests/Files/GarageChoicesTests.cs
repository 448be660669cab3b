using Heaveline.Files.Garages;
using Heaveline.Quantities;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public sealed class GarageChoicesTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("heaveline-choices-");

    private string ChoicesFile => Path.Combine(folder.FullName, GarageChoices.Name);

    [Fact]
    public void A_garage_remembers_units_and_changes_its_mind()
    {
        var garage = new Garage(folder.FullName);
        Assert.Equal(ReaderUnits.Metric, GarageChoices.Units(garage.Folder).Value);
        Assert.Equal(SaveEnd.Saved, GarageChoices.Remember(garage, ReaderUnits.Imperial).End);
        Assert.Equal(ReaderUnits.Imperial, GarageChoices.Units(garage.Folder).Value);
        Assert.Equal(SaveEnd.Unchanged, GarageChoices.Remember(garage, ReaderUnits.Imperial).End);
        Assert.Equal(SaveEnd.Saved, GarageChoices.Remember(garage, ReaderUnits.Metric).End);
        Assert.Equal(ReaderUnits.Metric, GarageChoices.Units(garage.Folder).Value);
    }

    [Fact]
    public void What_it_remembers_is_no_car_and_no_file_that_is_refused()
    {
        var garage = new Garage(folder.FullName);
        GarageChoices.Remember(garage, ReaderUnits.Imperial);
        var entry = Assert.Single(garage.List().Entries, one => !one.IsBuiltIn);
        Assert.Equal((GarageKind.Choices, 0), (entry.Kind, entry.Refusals));
        Assert.Empty(garage.List().Cars);
    }

    [Fact]
    public void A_car_of_that_name_is_left_alone_and_remembers_nothing()
    {
        File.Copy(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"), ChoicesFile);
        var before = File.ReadAllText(ChoicesFile);
        Assert.Equal(ReaderUnits.Metric, GarageChoices.Units(folder.FullName).Value);
        Assert.Equal(SaveEnd.NameRefused, GarageChoices.Remember(new Garage(folder.FullName), ReaderUnits.Imperial).End);
        Assert.Equal(before, File.ReadAllText(ChoicesFile));
    }

    [Theory]
    [InlineData("units: furlongs\n", 8, "units is 'furlongs'; it must be metric or imperial.")]
    [InlineData("units: [metric, imperial]\n", 1, "units is no word; it must be metric or imperial.")]
    public void Another_word_is_refused_in_its_place(string text, int column, string message)
    {
        File.WriteAllText(ChoicesFile, text);
        var refusal = Assert.Single(GarageChoices.Units(folder.FullName).Refusals);
        Assert.Equal((1, column, message), (refusal.Line, refusal.Column, refusal.Message));
    }

    public void Dispose() => folder.Delete(recursive: true);
}
