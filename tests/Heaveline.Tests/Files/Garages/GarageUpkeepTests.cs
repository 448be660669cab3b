using System.Text;
using Heaveline.Files.Garages;

namespace Heaveline.Tests.Files.Garages;

public sealed class GarageUpkeepTests : IDisposable
{
    private const string Variant = "# why\nvariant: soft # the second try\nof: fern.yaml\nchange: {body: {centre-of-gravity-height: 0.60 m}}\n";

    private readonly TemporaryFolder folder = new();
    private readonly StoppedClock clock = new(new DateTimeOffset(2031, 5, 7, 8, 9, 10, 123, TimeSpan.Zero));
    private readonly Garage garage;

    public GarageUpkeepTests()
    {
        folder.Write("fern.yaml", TextCar.Sound + "\n# mine\n");
        folder.Write("fern-soft.yaml", Variant);
        folder.Write("fern-soft-more.yaml", "variant: softer\nof: \"fern-soft.yaml\"\nchange: {body: {centre-of-gravity-height: 0.62 m}}\n");
        folder.Write("plover.yaml", TextCar.Sound);
        folder.Write("hump.yaml", "road: our hump\nround-top-hump: {height: 75 mm, length: 3.7 m}\n");
        folder.Write("drives/lane/drive.yaml", "drive: Larch Lane\ncar: ../../fern.yaml # as it was\nphone: {behind-front-axle: 1.3 m}\n");
        folder.Write(
            "ties.yaml", "ties: evening\nover: hump.yaml\npasses:\n  - {speed: 20 km/h, front: 41 mm, rear: 38 mm}\n");
        garage = new Garage(folder.Root, clock);
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_renamed_car_is_still_the_base_of_its_variants_and_the_car_of_its_drives()
    {
        var before = Bytes("fern.yaml");
        var done = garage.Upkeep.Rename("fern.yaml", null, "oak.yaml", Of("fern.yaml"));
        Assert.Equal((SaveEnd.Saved, ""), (done.End, done.Words));
        Assert.Equal(["drives/lane/drive.yaml", "fern-soft.yaml"], done.Followed);
        Assert.False(Exists("fern.yaml"));
        Assert.Equal(before, Bytes("oak.yaml"));
        Assert.Equal(Variant.Replace("fern.yaml", "oak.yaml", StringComparison.Ordinal), Text("fern-soft.yaml"));
        Assert.Contains("car: ../../oak.yaml # as it was\n", Text("drives/lane/drive.yaml"), StringComparison.Ordinal);
        Assert.Equal("Test car, soft, softer", garage.Car("fern-soft-more.yaml").Value!.Name);
        Assert.Equal(Variant, garage.ReadEarlier("fern-soft.yaml", garage.Earlier("fern-soft.yaml")[0].Until).Text);
        Assert.Empty(garage.Upkeep.TakenOut);
    }

    [Fact]
    public void A_new_name_inside_keeps_every_other_byte_and_the_version_before_it()
    {
        var done = garage.Upkeep.Rename("fern.yaml", "Oak: \"the\" saloon", "oak.yaml", Of("fern.yaml"));
        Assert.True(done.IsDone, done.Words);
        Assert.Equal("Oak: \"the\" saloon", garage.Car("oak.yaml").Value!.Name);
        Assert.EndsWith("\n# mine\n", Text("oak.yaml"), StringComparison.Ordinal);
        var version = Assert.Single(garage.Earlier("oak.yaml"));
        Assert.StartsWith("car: Test car", garage.ReadEarlier("oak.yaml", version.Until).Text, StringComparison.Ordinal);

        // And under the same file name.
        var again = garage.Upkeep.Rename("oak.yaml", "Oak", "oak.yaml", Of("oak.yaml"));
        Assert.True(again.IsDone, again.Words);
        Assert.Equal("Oak", garage.Car("oak.yaml").Value!.Name);
        Assert.Equal(2, garage.Earlier("oak.yaml").Count);
    }

    [Fact]
    public void A_renamed_road_is_still_the_road_of_its_ties()
    {
        Assert.Equal("ties.yaml", Assert.Single(garage.Upkeep.NamedBy("hump.yaml")).File);
        var done = garage.Upkeep.Rename("hump.yaml", "the hump", "the-hump.yaml", Of("hump.yaml"));
        Assert.True(done.IsDone, done.Words);
        Assert.Contains("over: the-hump.yaml\n", Text("ties.yaml"), StringComparison.Ordinal);
        Assert.Equal("the hump", garage.Road("the-hump.yaml").Value!.Name);
    }

    [Theory]
    [InlineData("plover.yaml", "there is a file plover.yaml already")]
    [InlineData("Plover.yaml", "there is a file plover.yaml already")]
    [InlineData("garage.yaml", "the garage remembers")]
    [InlineData("nul.yaml", "a device")]
    [InlineData("../oak.yaml", "inside the garage")]
    [InlineData("drives/oak.yaml", "another folder")]
    [InlineData("earlier/oak.yaml", "earlier versions")]
    [InlineData("oak.txt", "must end in")]
    [InlineData("oak?.yaml", "must not hold")]
    public void A_name_that_cannot_be_is_refused_in_words_and_nothing_is_touched(string to, string words)
    {
        var before = Everything();
        var done = garage.Upkeep.Rename("fern.yaml", "Oak", to, Of("fern.yaml"));
        Assert.False(done.IsDone);
        Assert.Contains(words, done.Words, StringComparison.Ordinal);
        Assert.Contains(words, garage.Upkeep.Copy("fern.yaml", "Oak", to).Words, StringComparison.Ordinal);
        Assert.Equal(before, Everything());
    }

    [Fact]
    public void A_car_is_not_taken_out_without_its_variants()
    {
        Assert.Equal(["fern.yaml", "fern-soft.yaml", "fern-soft-more.yaml"], garage.Upkeep.WithVariants("fern.yaml"));
        var before = Everything();
        var done = garage.Upkeep.TakeOut([("fern.yaml", Of("fern.yaml"))]);
        Assert.Equal(SaveEnd.Conflict, done.End);
        Assert.StartsWith("the variant soft (fern-soft.yaml) would be left without", done.Words, StringComparison.Ordinal);
        Assert.Equal(before, Everything());
    }

    [Fact]
    public void What_is_taken_out_comes_back_byte_for_byte()
    {
        var before = Everything();
        var taken = garage.Upkeep.TakeOut(Seen("fern.yaml"));
        Assert.True(taken.IsDone, taken.Words);
        Assert.Equal(["fern.yaml", "fern-soft.yaml", "fern-soft-more.yaml"], taken.Kept.Select(kept => kept.Name));
        Assert.All(taken.Kept, kept => Assert.False(Exists(kept.Name)));
        Assert.DoesNotContain(garage.List().Entries, entry => entry.Name.StartsWith("fern", StringComparison.Ordinal));
        Assert.Equal(taken.Kept.ToHashSet(), garage.Upkeep.TakenOut.Select(one => one.Version).ToHashSet());
        Assert.Contains((GarageKind.Variant, "soft"), garage.Upkeep.TakenOut.Select(one => (one.Kind, one.Title)));
        var back = garage.Upkeep.PutBack(taken.Kept);
        Assert.True(back.IsDone, back.Words);
        Assert.Equal(before, Everything());
        Assert.Empty(garage.Upkeep.TakenOut);
        Assert.Equal("fern.yaml is no longer kept, or is back already.", garage.Upkeep.PutBack(taken.Kept).Message);
    }

    [Fact]
    public void What_was_taken_out_stays_listed_when_another_car_gets_its_name_and_comes_back_under_a_free_one()
    {
        var was = Bytes("fern.yaml");
        Assert.True(garage.Upkeep.TakeOut(Seen("fern.yaml")).IsDone);
        Assert.Equal(SaveEnd.Saved, garage.Save("fern.yaml", "car: Another\n", null).End);
        Assert.Empty(garage.Earlier("fern.yaml"));
        var listed = garage.Upkeep.TakenOut;
        Assert.Equal(["fern-2.yaml", "fern-soft-more.yaml", "fern-soft.yaml"], listed.Select(one => one.Version.Name).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(listed, one => one.Title == "Another");
        var back = garage.Upkeep.PutBack([.. listed.OrderBy(one => one.Kind).Select(one => one.Version)]);
        Assert.True(back.IsDone, back.Words);
        Assert.Equal(was, Bytes("fern-2.yaml"));
        // Its variants are its own, and not the other car's.
        Assert.Contains(garage.Upkeep.NamedBy("fern-2.yaml"), one => one.File == "fern-soft.yaml");
        Assert.DoesNotContain(garage.Upkeep.NamedBy("fern.yaml"), one => one.Kind == GarageKind.Variant);
        Assert.Equal("car: Another\n", garage.Read("fern.yaml").Text);
        Assert.Empty(garage.Upkeep.TakenOut);
    }

    [Fact]
    public void A_car_that_is_saved_again_under_its_name_keeps_its_earlier_versions()
    {
        var text = garage.Read("plover.yaml").Text!;
        Assert.True(garage.Upkeep.TakeOut(Seen("plover.yaml")).IsDone);
        Assert.Equal(SaveEnd.Saved, garage.Save("plover.yaml", text + "# again\n", null).End);
        Assert.Single(garage.Earlier("plover.yaml"));
        Assert.Empty(garage.Upkeep.TakenOut);
    }

    [Fact]
    public void A_text_with_a_mark_at_its_start_comes_back_byte_for_byte()
    {
        byte[] bytes = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes("car: Marked\r\n")];
        File.WriteAllBytes(Path.Combine(folder.Root, "marked.yaml"), bytes);
        var taken = garage.Upkeep.TakeOut(Seen("marked.yaml"));
        Assert.True(taken.IsDone, taken.Words);
        Assert.True(garage.Upkeep.PutBack(taken.Kept).IsDone);
        Assert.Equal(bytes, Bytes("marked.yaml"));
    }

    [Fact]
    public void What_somebody_else_has_changed_or_taken_away_since_it_was_listed_stays_as_it_is()
    {
        var seen = Seen("plover.yaml");
        folder.Write("plover.yaml", TextCar.Sound + "# changed\n");
        var before = Everything();
        Assert.StartsWith("plover.yaml was changed by somebody else", garage.Upkeep.TakeOut(seen).Words, StringComparison.Ordinal);
        Assert.StartsWith("plover.yaml was changed by somebody else", Renamed(), StringComparison.Ordinal);
        Assert.Equal(before, Everything());
        File.Delete(Path.Combine(folder.Root, "plover.yaml"));
        Assert.StartsWith("plover.yaml is gone", garage.Upkeep.TakeOut(seen).Words, StringComparison.Ordinal);
        Assert.StartsWith("plover.yaml is gone", Renamed(), StringComparison.Ordinal);

        string Renamed() => garage.Upkeep.Rename("plover.yaml", null, "oak.yaml", seen[0].Read).Words;
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_change_in_the_very_moment_undoes_what_was_done_before_it(bool takesOut)
    {
        var moments = 0;
        var hasty = new Garage(folder.Root, clock)
        {
            // The last of several files is changed when the others have been seen to.
            BeforeReplacing = () =>
            {
                if (++moments == (takesOut ? 3 : 2))
                {
                    folder.Write("fern.yaml", "car: another's\n");
                }
            },
        };
        var done = takesOut ? hasty.Upkeep.TakeOut(Seen("fern.yaml")) : hasty.Upkeep.Rename("fern.yaml", null, "oak.yaml", Of("fern.yaml"));
        Assert.StartsWith("fern.yaml was changed by somebody else", done.Words, StringComparison.Ordinal);
        Assert.Equal("car: another's\n", Text("fern.yaml"));
        Assert.Equal(Variant, Text("fern-soft.yaml"));
        Assert.Contains("../../fern.yaml", Text("drives/lane/drive.yaml"), StringComparison.Ordinal);
        Assert.True(Exists("fern-soft-more.yaml"));
        Assert.False(Exists("oak.yaml"));
    }

    [Fact]
    public void A_file_that_came_under_the_name_meanwhile_is_not_written_over_when_another_is_put_back()
    {
        var taken = garage.Upkeep.TakeOut(Seen("plover.yaml"));
        folder.Write("plover.yaml", "car: a newcomer\n");
        var back = garage.Upkeep.PutBack(taken.Kept);
        Assert.Equal(SaveEnd.Conflict, back.End);
        Assert.Contains("there is another file plover.yaml meanwhile", back.Words, StringComparison.Ordinal);
        Assert.Equal("car: a newcomer\n", Text("plover.yaml"));
        Assert.Equal(TextCar.Sound, garage.ReadEarlier("plover.yaml", taken.Kept[0].Until).Text);
    }

    [Fact]
    public void Two_who_take_out_the_same_file_at_once_are_told_which_of_them_did()
    {
        var other = new Garage(folder.Root, clock);
        var seen = Seen("plover.yaml");
        UpkeepOutcome[] both = new UpkeepOutcome[2];
        Parallel.Invoke(() => both[0] = garage.Upkeep.TakeOut(seen), () => both[1] = other.Upkeep.TakeOut(seen));
        var done = Assert.Single(both, one => one.IsDone);
        Assert.StartsWith("plover.yaml is gone", Assert.Single(both, one => !one.IsDone).Words, StringComparison.Ordinal);
        Assert.True(garage.Upkeep.PutBack(done.Kept).IsDone);
    }

    [Fact]
    public void A_copy_is_the_same_once_more_and_a_new_car_says_that_nothing_was_measured_on_it()
    {
        Assert.True(garage.Upkeep.Copy("fern.yaml", "Fern once more", "fern-2.yaml").IsDone);
        Assert.Equal(Text("fern.yaml").Replace("Test car", "Fern once more", StringComparison.Ordinal), Text("fern-2.yaml"));
        Assert.True(garage.Upkeep.Copy("fern-soft.yaml", "soft too", "fern-soft-2.yaml").IsDone);
        Assert.Equal("Test car, soft too", garage.Car("fern-soft-2.yaml").Value!.Name);
        Assert.True(garage.Upkeep.Copy("fern.yaml", "Another", "another.yaml", isNewCar: true).IsDone);
        Assert.Contains("wheelbase: 2.50 m # from Test car, not measured", Text("another.yaml"), StringComparison.Ordinal);
        var again = garage.Upkeep.Copy("fern.yaml", "Another", "another.yaml");
        Assert.StartsWith("there is a file another.yaml already", again.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_carries_the_notes_and_the_stamps_of_what_it_has_read()
    {
        folder.Write("noted.yaml", "road: lane\nnote: by the mill\nround-top-hump: {height: 75 mm, length: 3.7 m}\n");
        var entry = garage.List().Entries.Single(one => one.Name == "noted.yaml");
        Assert.Equal(("by the mill", Of("noted.yaml")), (entry.Note, entry.Stamp));
    }

    private (string Name, Stamp Read)[] Seen(string name) => [.. garage.Upkeep.WithVariants(name).Select(one => (one, Of(one)))];

    private Stamp Of(string name) => garage.Read(name).Stamp!.Value;

    private bool Exists(string name) => File.Exists(Path.Combine(folder.Root, name));

    private byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(folder.Root, name));

    private string Text(string name) => File.ReadAllText(Path.Combine(folder.Root, name));

    // Every file but the lock, with its bytes.
    private string Everything() => string.Join('\n', Directory.EnumerateFiles(folder.Root, "*.yaml", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal).Select(path => $"{path}: {Stamp.Of(File.ReadAllBytes(path))}"));
}
