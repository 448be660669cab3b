using System.Globalization;
using Heaveline.Files.Garages;
using Heaveline.Finding;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Tests.Cli;
using Heaveline.Tests.House;
using Microsoft.Data.Sqlite;

namespace Heaveline.Tests.Finding;

public sealed class GarageIndexTests : IDisposable
{
    private readonly Scratch scratch = new();

    public GarageIndexTests()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml"))
        {
            File.Copy(file, At(Path.GetFileName(file)));
        }
    }

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void Words_are_found_in_texts_names_and_kinds_by_their_beginnings()
    {
        using var index = Updated();
        Assert.Contains(Found(index, "weighbridge"), f => f.Name == "fern-saloon.yaml" && f.Place.Contains("weighbridge", StringComparison.Ordinal));
        Assert.Equal(["plover-motorcycle.yaml"], Found(index, "plov").Select(f => f.Name));
        Assert.Empty(Found(index, "weighbridge plov"));
        Assert.All(index.Find(new() { Words = ["variant"] }), f => Assert.Equal(GarageKind.Variant, f.Kind));
        Assert.Empty(Found(index, "\" OR name:*"));
    }

    [Fact]
    public void Cars_are_found_by_numbers_that_hold_under_one_and_the_same_load()
    {
        using var index = Updated();
        var mass = Bound("mass", isLeast: true, 1700.0);
        var found = index.Find(new() { Kinds = [GarageKind.Car], Bounds = [Bound("ratio", isLeast: false, 1.0), mass] });
        var expected =
            from name in Directory.EnumerateFiles(Folder, "*.yaml").Select(Path.GetFileName)
            let car = new Garage(Folder).Car(name!).Value
            where !File.ReadAllText(At(name!)).Contains("\nvariant:", StringComparison.Ordinal)
                && !File.ReadAllText(At(name!)).StartsWith("variant:", StringComparison.Ordinal)
            where car.LoadStates.Prepend(Heaveline.Cars.LoadState.Reference).Select(load => new CarAtRest(RideModel.Of(car, load)))
                .Any(rest => AxleCatalogue.FrequencyRatio.Of(rest) <= 1.0 && Number("mass").Of(rest) >= 1700.0)
            orderby name
            select name;
        Assert.Equal(expected, found.Select(f => f.Name));
        Assert.NotEmpty(found);
        Assert.All(found.SelectMany(f => f.Numbers), n => Assert.True(double.IsFinite(n.Value)));
    }

    // What is listed as 1.000 is at most 1.000 and at least 1.000, whatever stands behind that.
    [Fact]
    public void A_car_is_found_by_the_number_that_is_printed_of_it()
    {
        using var index = Updated();
        var ratio = Number("ratio");
        var own = index.Find(new() { Kinds = [GarageKind.Car] }).First(f => f.Name == "fern-saloon.yaml").Numbers.First(n => n.Key == "ratio").Value;
        var printed = double.Parse(ratio.Print(own), CultureInfo.InvariantCulture);
        foreach (var isLeast in new[] { true, false })
        {
            Assert.Contains(index.Find(new() { Bounds = [Bound("ratio", isLeast, printed)] }), f => f.Name == "fern-saloon.yaml");
        }
    }

    [Fact]
    public void Only_what_has_changed_is_read_again_and_what_stands_on_it()
    {
        var later = new Later();
        using (var first = GarageIndex.Open(new Garage(Folder), later))
        {
            Assert.Equal(0, first.Update().Kept);
            Assert.Equal(0, first.Update().Read);
        }

        using var index = GarageIndex.Open(new Garage(Folder), later);
        var variants = Directory.EnumerateFiles(Folder, "fern-saloon-*.yaml").Count();
        var before = Ratio(index, "fern-saloon-springs.yaml");
        File.WriteAllText(
            At("fern-saloon.yaml"),
            File.ReadAllText(At("fern-saloon.yaml")).Replace("rear: 618 kg", "rear: 700 kg", StringComparison.Ordinal));
        var update = index.Update();
        Assert.Equal(1 + variants, update.Read);
        Assert.NotEqual(before, Ratio(index, "fern-saloon-springs.yaml"));
        File.Delete(At("fern-saloon.yaml"));
        Assert.Equal((variants, 1), index.Update() is var gone ? (gone.Read, gone.Gone) : default);
        Assert.NotEqual("", index.Find(new() { Kinds = [GarageKind.Variant] }).Single(f => f.Name == "fern-saloon-springs.yaml").Problem);
    }

    [Theory]
    [InlineData("rubbish")]
    [InlineData("")]
    public void A_damaged_or_empty_index_is_made_anew(string content)
    {
        using (Updated())
        {
        }

        File.WriteAllText(At(".heaveline/index.db"), content.Length > 0 ? string.Concat(Enumerable.Repeat(content, 500)) : "");
        Assert.Equal(["plover-motorcycle.yaml"], GarageFinder.Of(new Garage(Folder), new() { Words = ["plov"] }).Files.Select(f => f.Name));
        using var index = Updated();
        Assert.Equal(["plover-motorcycle.yaml"], Found(index, "plov").Select(f => f.Name));
    }

    // Its first page is whole, so that it opens: the damage is met by the question.
    [Fact]
    public void An_index_that_is_damaged_further_in_is_made_anew_and_named()
    {
        using (Updated())
        {
        }

        var bytes = File.ReadAllBytes(At(".heaveline/index.db"));
        Array.Fill(bytes, (byte)0x5A, 4096, bytes.Length - 4096);
        File.WriteAllBytes(At(".heaveline/index.db"), bytes);
        var found = GarageFinder.Of(new Garage(Folder), new() { Words = ["plov"] });
        Assert.Equal(["plover-motorcycle.yaml"], found.Files.Select(f => f.Name));
        Assert.Equal("'.heaveline/index.db' was damaged and is made anew.", found.Remark);
        Assert.Equal("", GarageFinder.Of(new Garage(Folder), new()).Remark);
    }

    [Theory]
    [InlineData(".heaveline/index.db")]
    [InlineData(".heaveline/.gitignore")]
    [InlineData(".heaveline")]
    public void No_link_is_followed_where_the_index_lies_even_one_that_leads_nowhere(string link)
    {
        using var outside = new Scratch();
        var target = outside["elsewhere"];
        Directory.CreateDirectory(Path.GetDirectoryName(At(link))!);
        File.CreateSymbolicLink(At(link), target);
        var found = GarageFinder.Of(new Garage(Folder), new() { Words = ["plov"] });
        Assert.Equal(["plover-motorcycle.yaml"], found.Files.Select(f => f.Name));
        Assert.StartsWith($"'{link}' is a link:", found.Remark, StringComparison.Ordinal);
        Assert.False(Path.Exists(target));
    }

    [Fact]
    public void What_lies_in_the_way_of_the_index_is_named()
    {
        File.WriteAllText(At(".heaveline"), "");
        Assert.StartsWith("'.heaveline' is a file:", GarageFinder.Of(new Garage(Folder), new()).Remark, StringComparison.Ordinal);
        File.Delete(At(".heaveline"));
        Directory.CreateDirectory(At(".heaveline/index.db"));
        Assert.StartsWith("'.heaveline/index.db' is a folder:", GarageFinder.Of(new Garage(Folder), new()).Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void While_another_program_writes_the_index_the_files_are_read_without_it()
    {
        using (Updated())
        {
        }

        using var other = new SqliteConnection($"Data Source={At(".heaveline/index.db")};Pooling=False");
        other.Open();
        using var writes = other.BeginTransaction();
        var found = GarageFinder.Of(new Garage(Folder), new() { Words = ["plov"] }, patience: 1);
        Assert.Equal(["plover-motorcycle.yaml"], found.Files.Select(f => f.Name));
        Assert.StartsWith("another program is writing '.heaveline/index.db':", found.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_any_file_of_a_garage_is_refused_before_anything_is_written()
    {
        using var bare = new Scratch();
        var folder = Path.GetDirectoryName(bare["any"])!;
        Directory.CreateDirectory(Path.Combine(folder, "a", "b"));
        File.Copy(At("plover-motorcycle.yaml"), Path.Combine(folder, "a", "b", "plover-motorcycle.yaml"));
        var said = Spoken.Of("find", folder, "plov");
        Assert.Equal(1, said.Code);
        Assert.Contains("is no garage", said.Remarks, StringComparison.Ordinal);
        Assert.False(Path.Exists(Path.Combine(folder, ".heaveline")));
    }

    [Fact]
    public void A_bound_is_read_in_another_unit_of_its_kind_and_a_load_on_the_stops_is_marked()
    {
        var pounds = Spoken.Of("find", Folder, "--where", "mass at least 3000 lb");
        Assert.Equal(Spoken.Of("find", Folder, "--where", "mass at least 1360.77711 kg").Results, pounds.Results);
        Assert.Equal(0, pounds.Code);
        Assert.Equal(2, Spoken.Of("find", Folder, "--where", "mass at least 3000").Code);
        Assert.DoesNotContain("(on a bump stop)", Spoken.Of("find", Folder, "plov").Results, StringComparison.Ordinal);
        var low = File.ReadAllText(At("fern-saloon.yaml"))
            .Replace(" bump-stop: {clearance: 95 mm", " bump-stop: {clearance: 9 mm", StringComparison.Ordinal);
        File.WriteAllText(At("low.yaml"), low);
        Assert.Contains("(on a bump stop)", Spoken.Of("find", Folder, "low", "--kind", "car").Results, StringComparison.Ordinal);
    }

    [Fact]
    public void An_index_of_another_version_is_made_anew()
    {
        using (Updated())
        {
        }

        using (var old = new SqliteConnection($"Data Source={At(".heaveline/index.db")};Pooling=False"))
        {
            old.Open();
            using var command = old.CreateCommand();
            command.CommandText = "PRAGMA user_version = 99; DROP TABLE numbers; UPDATE files SET title = 'old'";
            command.ExecuteNonQuery();
        }

        using var index = GarageIndex.Open(new Garage(Folder));
        Assert.Equal(0, index.Update().Kept);
        Assert.DoesNotContain(index.Find(new()), f => f.Title == "old");
    }

    [Fact]
    public void What_it_keeps_is_no_file_of_the_garage_and_of_no_history()
    {
        using (Updated())
        {
        }

        Assert.DoesNotContain(new Garage(Folder).List().Entries, entry => entry.Name.Contains("heaveline", StringComparison.Ordinal));
        Assert.Equal("*\n", File.ReadAllText(At(".heaveline/.gitignore")));
    }

    [Fact]
    public void The_command_says_what_it_found_with_its_numbers()
    {
        var said = Spoken.Of("find", Folder, "--kind", "cars", "--where", "ratio at most 1");
        Assert.Equal(0, said.Code);
        Assert.Contains("Fern saloon: car, fern-saloon.yaml", said.Results, StringComparison.Ordinal);
        Assert.Contains("under 'four up with luggage'", said.Results, StringComparison.Ordinal);
        Assert.Contains("Nothing is found among ", Spoken.Of("find", Folder, "zeppelin").Results, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--kind", "boats", "'boats' is no kind of file; there are car, variant, road, drive, film, cable ties")]
    [InlineData("--where", "ratio below 1", "write it as \"ratio at least 1.05\"")]
    [InlineData("--where", "rato at most 1", "Did you mean ratio?")]
    [InlineData("--where", "zeppelin at most 1", "of the glossary: mass, front-load, rear-load,")]
    public void What_cannot_be_looked_for_is_refused(string option, string value, string because)
    {
        var said = Spoken.Of("find", Folder, option, value);
        Assert.Equal(2, said.Code);
        Assert.Contains(because, said.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_named()
    {
        var said = Spoken.Of("find", At("nowhere"), "fern");
        Assert.Equal(1, said.Code);
        Assert.Contains("there is no folder", said.Remarks, StringComparison.Ordinal);
    }

    private string Folder => Path.GetDirectoryName(scratch["any"])!;

    private string At(string name) => scratch[name];

    private static Measure<CarAtRest> Number(string key) => GarageIndex.Numbers.Single(m => m.Key == key);

    private static MeasureBound Bound(string key, bool isLeast, double limit) => new() { Measure = Number(key), IsLeast = isLeast, Limit = limit };

    private static IReadOnlyList<FoundFile> Found(GarageIndex index, string words) => index.Find(new() { Words = words.Split(' ') });

    private static double Ratio(GarageIndex index, string name) =>
        index.Find(new()).Single(f => f.Name == name).Numbers.First(n => n.Key == "ratio").Value;

    private GarageIndex Updated()
    {
        var index = GarageIndex.Open(new Garage(Folder));
        index.Update();
        return index;
    }

    // So late that no file was written just now.
    private sealed class Later : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => DateTimeOffset.UtcNow + TimeSpan.FromMinutes(1.0);
    }
}
