using System.Text;
using Heaveline.Files.Cars;
using Heaveline.Files.Garages;

namespace Heaveline.Tests.Files.Garages;

/// <summary>What a garage must bear: names that lead out of it, and texts made to exhaust the reader.</summary>
public sealed class GarageAttackTests : IDisposable
{
    private readonly TemporaryFolder outside = new();
    private readonly Garage garage;

    public GarageAttackTests()
    {
        outside.Write("secret.yaml", "car: secret\n");
        outside.Write("garage/fern.yaml", "car: Fern\n");
        garage = new Garage(Path.Combine(outside.Root, "garage"));
    }

    public static TheoryData<string, string> Texts => new()
    {
        // "Billion laughs": nine levels, each of ten times the one before it.
        { Laughs(), "an anchor (&) is not taken here." },
        { new string('[', 10_000), "groups and lists are nested more than 16 deep." },
        { "car: " + new string('[', 10_000) + new string(']', 10_000), "groups and lists are nested more than 16 deep." },
        { "car: " + string.Concat(Enumerable.Repeat("{a: ", 10_000)) + new string('}', 10_000), "groups and lists are nested more than 16 deep." },
        { string.Concat(Enumerable.Range(0, 500).Select(i => new string(' ', i) + "a:\n")), "groups and lists are nested more than 16 deep." },
        { string.Concat(Enumerable.Repeat("- ", 10_000)) + "a", "groups and lists are nested more than 16 deep." },
        { "car: [" + string.Concat(Enumerable.Repeat("a,", 100_000)) + "]", "the file has more than 20000 keys and values." },
        {
            "? " + new string('k', 100_000) + "\n: [" + string.Concat(Enumerable.Repeat("a,", 50_000)) + "]",
            "a key has 100000 characters; it must have 100 or fewer."
        },
        { "car: a\0b", "a character that text files do not hold stands here, U+0000." },
        { "car: !!python/object/apply:os.system [ls]", "a tag (!) is not taken here." },
        { "car: a\n---\ncar: b", "a second document begins here." },
    };

    public void Dispose() => outside.Dispose();

    [Theory]
    [InlineData("../secret.yaml")]
    [InlineData("..")]
    [InlineData("x/../../secret.yaml")]
    [InlineData("./fern.yaml")]
    [InlineData("x//fern.yaml")]
    [InlineData("/etc/passwd.yaml")]
    [InlineData("\\\\host\\share\\a.yaml")]
    [InlineData("..\\secret.yaml")]
    [InlineData("C:\\a.yaml")]
    [InlineData("C:a.yaml")]
    [InlineData("fern.yaml:stream.yaml")]
    [InlineData("fern.yaml\0.yaml")]
    [InlineData("fern\n.yaml")]
    [InlineData("con.yaml")]
    [InlineData("x/LPT1.yaml")]
    [InlineData("fern\nheaveline.yaml")]
    [InlineData("fern\u202Elmay.yaml")]
    [InlineData("fern\u2028.yaml")]
    [InlineData("com².tar.yaml")]
    [InlineData("NUL .yaml")]
    [InlineData("fern.yaml ")]
    [InlineData("fern.yaml.")]
    [InlineData("dir./fern.yaml")]
    [InlineData(".hidden.yaml")]
    [InlineData(".git/config.yaml")]
    [InlineData("~/fern*.yaml")]
    [InlineData("fern.csv")]
    [InlineData("fern")]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("earlier/fern.2031-05-07T080910123.yaml")]
    [InlineData("Earlier/fern.yaml")]
    public void A_name_that_is_not_inside_is_refused_whatever_is_asked(string name)
    {
        Assert.Null(garage.Find(name).Path);
        Assert.Null(garage.Read(name).Text);
        Assert.Null(garage.Car(name).Value);
        Assert.Null(garage.Car(name, "car: x\n").Value);
        Assert.Null(garage.Road(name).Value);
        Assert.Equal(SaveEnd.NameRefused, garage.Save(name, "car: x\n", null).End);
        Assert.Empty(garage.Earlier(name));
        Assert.Equal(SaveEnd.NameRefused, garage.Restore(name, default, null).End);
        Assert.Equal(["fern.yaml"], Directory.GetFileSystemEntries(garage.Folder).Select(path => Path.GetFileName(path)));
        Assert.Equal("car: secret\n", File.ReadAllText(Path.Combine(outside.Root, "secret.yaml")));
    }

    [Fact]
    public void A_name_of_any_length_is_answered() => Assert.Null(garage.Find(new string('a', 100_000) + ".yaml").Path);

    [Fact]
    public void A_link_that_leads_out_is_neither_read_nor_listed_nor_written_through()
    {
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "link.yaml"), Path.Combine(outside.Root, "secret.yaml"));
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "dots.yaml"), "../secret.yaml");
        Directory.CreateSymbolicLink(Path.Combine(garage.Folder, "up"), outside.Root);
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "round.yaml"), "round.yaml");
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "nowhere.yaml"), "../not-there.yaml");

        // Two links, each of which looks harmless by the letters of its path: low is two folders down, and "../../.." counts from there.
        Directory.CreateDirectory(Path.Combine(garage.Folder, "low", "er"));
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "low", "er", "link.yaml"), "../../../secret.yaml");
        Directory.CreateDirectory(Path.Combine(garage.Folder, "a", "b", "c"));
        Directory.CreateSymbolicLink(Path.Combine(garage.Folder, "a", "b", "c", "short"), Path.Combine(garage.Folder, "low", "er"));

        string[] names = ["link.yaml", "dots.yaml", "up/secret.yaml", "round.yaml", "nowhere.yaml", "low/er/link.yaml", "a/b/c/short/link.yaml"];
        foreach (var name in names)
        {
            Assert.Contains("link", garage.Find(name).Refusal!.Message, StringComparison.Ordinal);
            Assert.Null(garage.Read(name).Text);
            Assert.Equal(SaveEnd.NameRefused, garage.Save(name, "car: x\n", Stamp.Of("car: secret\n")).End);
        }

        Assert.Equal(["fern.yaml"], garage.List().Cars.Select(car => car.Name));
        Assert.Equal("car: secret\n", File.ReadAllText(Path.Combine(outside.Root, "secret.yaml")));
        Assert.False(File.Exists(Path.Combine(outside.Root, "not-there.yaml")));

        // A link that stays inside is a name like any other.
        File.CreateSymbolicLink(Path.Combine(garage.Folder, "same.yaml"), "fern.yaml");
        Assert.Equal("car: Fern\n", garage.Read("same.yaml").Text);
    }

    [Fact]
    public void Earlier_versions_and_the_lock_are_not_written_through_a_link()
    {
        var kept = Directory.CreateDirectory(Path.Combine(outside.Root, "elsewhere")).FullName;
        Directory.CreateSymbolicLink(Path.Combine(garage.Folder, "earlier"), kept);
        Assert.Equal(SaveEnd.NotWritten, garage.Save("fern.yaml", "car: x\n", Stamp.Of("car: Fern\n")).End);
        Assert.Empty(Directory.GetFileSystemEntries(kept));

        File.Delete(Path.Combine(garage.Folder, ".heaveline-lock"));
        File.CreateSymbolicLink(Path.Combine(garage.Folder, ".heaveline-lock"), Path.Combine(kept, "lock"));
        Assert.Equal(SaveEnd.NotWritten, garage.Save("fern.yaml", "car: x\n", Stamp.Of("car: Fern\n")).End);
        Assert.Empty(Directory.GetFileSystemEntries(kept));
    }

    [Theory, MemberData(nameof(Texts))]
    public void A_text_made_to_exhaust_the_reader_is_refused_in_a_moment(string text, string message)
    {
        outside.Write("garage/bad.yaml", text);
        var worked = ThreadWork.Seconds();
        var before = GC.GetAllocatedBytesForCurrentThread();
        var reading = garage.Car("bad.yaml");
        Assert.Contains(reading.Refusals, refusal => refusal.Message == message && refusal.File == "bad.yaml");
        var entry = Assert.Single(garage.List().Entries, entry => entry.Name == "bad.yaml");
        Assert.True(entry.Refusals > 0);
        Assert.NotNull(CarFile.Edit(text, Heaveline.Files.Editing.KeyEdit.Put(["car"], "b")).Refusal);
        Assert.InRange(ThreadWork.Seconds() - worked, 0.0, 30.0);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 400_000_000);
    }

    [Fact]
    public void A_file_of_50_MB_is_refused_unread()
    {
        using (var file = File.Create(Path.Combine(garage.Folder, "big.yaml")))
        {
            file.SetLength(50_000_000);
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal("the file has 50000000 bytes; it must be 262144 or less.", garage.Read("big.yaml").Refusal!.Message);
        Assert.Equal(1, garage.List().Entries.Single(entry => entry.Name == "big.yaml").Refusals);
        Assert.Equal(SaveEnd.NotWritten, garage.Save("big.yaml", "car: x\n", null).End);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20_000_000);
    }

    [Fact]
    public void Loads_in_thousands_of_seats_that_are_not_there_are_refused_in_a_moment()
    {
        var text = new StringBuilder("car: a\nseats:\n");
        for (var i = 0; i < 1700; i++)
        {
            text.Append("  ").Append('s', 58).Append(i).Append(": 1\n");
        }

        text.Append("loads:\n  all:\n");
        for (var i = 0; i < 1600; i++)
        {
            text.Append("    - {in: ").Append('t', 58).Append(i).Append("}\n");
        }

        outside.Write("garage/seats.yaml", text.ToString());
        var worked = ThreadWork.Seconds();
        Assert.True(garage.Car("seats.yaml").Refusals.Count > 1600);
        Assert.InRange(ThreadWork.Seconds() - worked, 0.0, 30.0);
    }

    [Fact]
    public void A_variant_does_not_read_a_base_outside()
    {
        outside.Write("garage/v.yaml", "variant: v\nof: ../secret.yaml\nchange:\n  car: x\n");
        var reading = garage.Car("v.yaml");
        Assert.Contains("leads out of the folder", reading.Refusals[0].Message, StringComparison.Ordinal);
        Assert.Single(reading.Sources);
        Assert.Equal("../secret.yaml", garage.List().Variants.Single().Base);
    }

    private static string Laughs()
    {
        var text = new StringBuilder("car: &a0 ha\n");
        for (var i = 1; i < 10; i++)
        {
            text.Append($"k{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n");
        }

        return text.ToString();
    }
}
