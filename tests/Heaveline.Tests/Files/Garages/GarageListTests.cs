using System.Security.Cryptography;
using System.Text;
using Heaveline.Files.Cars;
using Heaveline.Files.Garages;
using Heaveline.Files.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Garages;

public class GarageListTests
{
    [Fact]
    public void The_examples_are_listed_with_titles_bases_and_no_complaint()
    {
        var listing = new Garage(Path.Combine(Checkout.Root, "examples")).List();
        Assert.False(listing.IsCut);
        Assert.All(listing.Entries, entry => Assert.True(entry is { Refusals: 0, Warnings: 0, Problem: null }, $"{entry.Name}: {entry.Problem}"));
        Assert.Equal(7, listing.Cars.Count());
        Assert.Equal("Fern saloon", listing.Cars.Single(car => car.Name == "garage/fern-saloon.yaml").Title);
        Assert.Equal(
            [
                ("garage/fern-saloon-bought.yaml", "bought springs", "garage/fern-saloon.yaml"),
                ("garage/fern-saloon-cured-towing.yaml", "towing", "garage/fern-saloon-cured.yaml"),
                ("garage/fern-saloon-cured-unlucky.yaml", "unlucky", "garage/fern-saloon-cured.yaml"),
                ("garage/fern-saloon-cured.yaml", "cured", "garage/fern-saloon.yaml"),
                ("garage/fern-saloon-measured.yaml", "measured for parts", "garage/fern-saloon.yaml"),
                ("garage/fern-saloon-springs.yaml", "springs only", "garage/fern-saloon.yaml"),
            ],
            listing.Variants.Select(variant => (variant.Name, variant.Title, variant.Base)));
        Assert.Equal("country lane", listing.Roads.Single(road => road.Name == "roads/country-lane.yaml").Title, ignoreCase: true);
        Assert.Equal(
            ("ties/fern-saloon-hump.yaml", "four times over the village hump"),
            listing.Ties.Select(sheet => (sheet.Name, sheet.Title)).Single());
        Assert.Equal(
            ("parts/village-autumn.yaml", "Village motor factors, autumn"), listing.Parts.Select(list => (list.Name, list.Title)).Single());
        Assert.Equal(("crews/suspension-lab.yaml", "suspension lab"), listing.Crews.Select(crew => (crew.Name, crew.Title)).Single());
        Assert.Equal(NamedRoads.All.Keys, listing.Roads.Where(road => road.IsBuiltIn).Select(road => road.Name));
        Assert.DoesNotContain(listing.Entries, entry => entry.Name.EndsWith(".csv", StringComparison.Ordinal) || entry.Kind == GarageKind.Unknown);
    }

    [Fact]
    public void Cars_variants_and_roads_are_read_under_their_names_in_the_garage()
    {
        var garage = new Garage(Path.Combine(Checkout.Root, "examples"));
        var reading = garage.Car("garage/fern-saloon-cured-towing.yaml");
        Assert.Equal("Fern saloon, cured, towing", reading.Value!.Name);
        Assert.Equal(
            ["garage/fern-saloon-cured-towing.yaml", "garage/fern-saloon-cured.yaml", "garage/fern-saloon.yaml"],
            reading.Sources.Select(source => source.File));
        Assert.NotNull(garage.Road("roads/country-lane.yaml").Value);
        Assert.NotNull(garage.Road("village-hump").Value);
        Assert.Equal("there is no such file.", garage.Road("roads/none.yaml").Refusals[0].Message);

        var broken = garage.Car(
            "garage/new.yaml", garage.Read("garage/fern-saloon.yaml").Text!.Replace("2.70 m", "2.70 kg", StringComparison.Ordinal));
        Assert.Null(broken.Value);
        Assert.Equal("garage/new.yaml", Assert.Single(broken.Refusals).File);
        Assert.StartsWith("garage/new.yaml:", broken.Format(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_garage_and_a_path_state_the_bytes_of_the_same_file_also_with_a_byte_order_mark()
    {
        using var folder = new TemporaryFolder();
        byte[] bytes = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(TextCar.Sound)];
        var path = Path.Combine(folder.Root, "marked.yaml");
        File.WriteAllBytes(path, bytes);
        var digest = Convert.ToHexStringLower(SHA256.HashData(bytes));
        Assert.Equal(digest, Assert.Single(CarFile.Load(path).Sources).Sha256);
        var inGarage = Assert.Single(new Garage(folder.Root).Car("marked.yaml").Sources);
        Assert.Equal(("marked.yaml", digest), (inGarage.File, inGarage.Sha256));
    }

    [Fact]
    public void What_lies_in_the_place_of_a_drives_file_is_refused_as_one()
    {
        using var folder = new TemporaryFolder();
        folder.Write("drives/list/drive.yaml", "- drive: b\n");
        folder.Write("drives/nul/drive.yaml", "drive: c\n");
        var garage = new Garage(folder.Root);
        var entry = Assert.Single(garage.List().Entries, e => !e.IsBuiltIn);
        Assert.Contains("(drive, note, car, load,", entry.Problem, StringComparison.Ordinal);
        Assert.Equal("list", DriveFolders.DriveOf(entry.Name));
        var check = Heaveline.Tests.Cli.Spoken.Of("check", Path.Combine(folder.Root, "drives", "list", "drive.yaml"));
        Assert.Contains("(drive, note, car, load,", check.Remarks, StringComparison.Ordinal);
        // A name that a device has elsewhere is not passed over in silence.
        var (drive, problem) = DriveSource.Of(garage, "nul");
        Assert.Null(drive);
        Assert.Contains("is the name of a device on some systems", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_with_a_file_is_counted_and_said()
    {
        using var folder = new TemporaryFolder();
        folder.Write("broken.yaml", "car: [\n");
        folder.Write("half.yaml", "car: Half # done\nwheelbase: 2.7\n");
        folder.Write("list.yaml", "- a\n");
        folder.Write("orphan.yaml", "variant: orphan\nof: gone.yaml\nchange:\n  car: x\n");
        folder.Write("latin.yaml", "car: x\n");
        File.WriteAllBytes(Path.Combine(folder.Root, "latin.yaml"), [0x63, 0x61, 0x72, 0x3A, 0x20, 0xE9]);
        folder.Write("road.yml", "road: A road\n");
        folder.Write("earlier/half.2031-05-07T080910123.yaml", "car: old\n");
        folder.Write("deep/er/car.yaml", "car: Deep\n");
        folder.Write("notes.txt", "car: no\n");
        var garage = new Garage(folder.Root);
        var entries = garage.List().Entries.Where(entry => !entry.IsBuiltIn).ToDictionary(entry => entry.Name);
        Assert.Equal(["broken.yaml", "deep/er/car.yaml", "half.yaml", "latin.yaml", "list.yaml", "orphan.yaml", "road.yml"], entries.Keys);
        Assert.Equal((GarageKind.Unknown, 1), (entries["broken.yaml"].Kind, entries["broken.yaml"].Refusals));
        Assert.Equal((GarageKind.Car, "Half"), (entries["half.yaml"].Kind, entries["half.yaml"].Title));
        Assert.Equal(garage.Car("half.yaml").Refusals.Count, entries["half.yaml"].Refusals);
        Assert.Equal("the file is no car, no variant and no road.", entries["list.yaml"].Problem);
        Assert.Equal(
            (GarageKind.Variant, "orphan", "gone.yaml", 1),
            (entries["orphan.yaml"].Kind, entries["orphan.yaml"].Title, entries["orphan.yaml"].Base, entries["orphan.yaml"].Refusals));
        Assert.Equal("the file is not UTF-8 text.", entries["latin.yaml"].Problem);
        Assert.Equal((GarageKind.Road, "A road", 1), (entries["road.yml"].Kind, entries["road.yml"].Title, entries["road.yml"].Refusals));
    }

    [Fact]
    public void A_folder_that_is_not_there_is_no_garage() =>
        Assert.Throws<DirectoryNotFoundException>(() => new Garage(Path.Combine(Checkout.Root, "no such folder")));

    [Fact]
    public void More_files_than_are_read_are_said_to_be_there()
    {
        using var folder = new TemporaryFolder();
        for (var i = 0; i <= Garage.MostFiles; i++)
        {
            folder.Write($"{i:D4}.yaml", "x: 1\n");
        }

        var listing = new Garage(folder.Root).List();
        Assert.True(listing.IsCut);
        Assert.Equal(Garage.MostFiles, listing.Entries.Count(entry => !entry.IsBuiltIn));
    }

    [Fact]
    public void What_is_named_as_a_car_file_and_is_not_listed_is_told_with_why()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(Path.Combine(folder.Root, "fern.yaml"), TextCar.Sound);
        Directory.CreateDirectory(Path.Combine(folder.Root, "box.yaml"));
        Directory.CreateDirectory(Path.Combine(folder.Root, "earlier"));
        File.WriteAllText(Path.Combine(folder.Root, "earlier", "old.yaml"), TextCar.Sound);
        List<(string Name, string Why)> expected = [("box.yaml", "is a folder")];
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(Path.Combine(folder.Root, "led-out.yaml"), "/etc/hostname");
            File.WriteAllText(Path.Combine(folder.Root, "less<.yaml"), TextCar.Sound);
            expected.Add(("led-out.yaml", "is a link"));
            expected.Add(("less<.yaml", "must not hold control characters or any of <>:\"|?*\\"));
        }

        var listing = new Garage(folder.Root).List();
        Assert.Equal(expected, listing.LeftOut);
        Assert.Equal("fern.yaml", Assert.Single(listing.Cars).Name);
    }
}
