using System.Text;
using Heaveline.Files.Garages;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Cars;
using Heaveline.Web.Pages.Garages;

namespace Heaveline.Tests.Web;

/// <summary>Windows on files of a garage: saving, meeting another's save, copies, variants, earlier versions, files brought in.</summary>
public sealed class CarEditorTests : IDisposable
{
    private const string File = "fern-saloon.yaml";
    private readonly string folder = Directory.CreateTempSubdirectory("heaveline-editor-").FullName;
    private readonly Garage garage;

    public CarEditorTests()
    {
        foreach (var path in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage")))
        {
            System.IO.File.Copy(path, Path.Combine(folder, Path.GetFileName(path)));
        }

        garage = new Garage(folder);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Two_windows_on_one_file_do_not_overwrite_each_other()
    {
        var (one, other) = (Open(), Open());
        Put(one, "24 N/mm");
        Put(other, "25 N/mm");
        Assert.Equal(SaveEnd.Saved, one.Save().End);
        Assert.Equal(SaveEnd.Conflict, other.Save().End);
        Assert.Contains("rate: 24 N/mm", OnDisk, StringComparison.Ordinal);
        Assert.True(other.IsChanged);
        Assert.Contains(
            TextChange.Between(other.SavedText, other.Conflict!.TextOnDisk!),
            line => line.Mark == '+' && line.Text.Contains("24 N/mm", StringComparison.Ordinal));

        Assert.Equal(SaveEnd.Saved, other.Overwrite().End);
        Assert.Null(other.Conflict);
        Assert.Contains("rate: 25 N/mm", OnDisk, StringComparison.Ordinal);
        Assert.Equal(2, other.Earlier.Count);
    }

    [Fact]
    public void A_window_with_nothing_unsaved_follows_the_file_and_one_with_something_has_a_conflict()
    {
        var (one, other, third) = (Open(), Open(), Open());
        Assert.Null(other.Follow());
        Put(one, "24 N/mm");
        Put(third, "25 N/mm");
        one.Save();
        Assert.NotNull(other.Follow());
        Assert.Equal(OnDisk, other.Draft.Text);
        Assert.False(other.IsChanged);
        Assert.Null(other.Conflict);
        Assert.Equal(SaveEnd.Unchanged, other.Save().End);

        Assert.NotNull(third.Follow());
        Assert.Equal(OnDisk, third.Conflict!.TextOnDisk);
        Assert.Contains("rate: 25 N/mm", third.Draft.Text, StringComparison.Ordinal);
        Assert.Equal(SaveEnd.Saved, third.Overwrite().End);

        System.IO.File.Delete(Path.Combine(folder, File));
        Assert.NotNull(other.Follow());
        Assert.Null(other.Conflict!.TextOnDisk);
    }

    [Fact]
    public void An_unsaved_text_is_taken_up_over_its_own_file_and_meets_another_as_a_conflict()
    {
        var (typing, later) = (Open(), Open());
        Put(typing, "25 N/mm");
        var (saved, stamp, text) = (typing.SavedText, typing.Stamp!.Value, typing.Draft.Text);
        later.TakeUp(saved, stamp, text);
        Assert.Equal(text, later.Draft.Text);
        Assert.Null(later.Conflict);

        Put(typing, "24 N/mm");
        typing.Save();
        var late = Open();
        late.TakeUp(saved, stamp, text);
        Assert.Equal(text, late.Draft.Text);
        Assert.Equal(saved, late.SavedText);
        Assert.Equal(OnDisk, late.Conflict!.TextOnDisk);
        Assert.Equal(SaveEnd.Conflict, late.Save().End);
    }

    [Fact]
    public void What_is_on_the_disk_can_be_taken_and_the_step_taken_back()
    {
        var (one, other) = (Open(), Open());
        Put(one, "24 N/mm");
        Put(other, "25 N/mm");
        one.Save();
        other.Save();
        var mine = other.Draft.Text;
        other.Reload();
        Assert.Equal(OnDisk, other.Draft.Text);
        Assert.False(other.IsChanged);
        other.Undo();
        Assert.Equal(mine, other.Draft.Text);
        Assert.Equal(SaveEnd.Saved, other.Save().End);
    }

    [Fact]
    public void A_file_that_has_gone_is_said_to_be_gone_and_can_be_saved_again()
    {
        var editor = Open();
        Put(editor, "24 N/mm");
        System.IO.File.Delete(Path.Combine(folder, File));
        Assert.Equal(SaveEnd.Conflict, editor.Save().End);
        Assert.Null(editor.Conflict!.TextOnDisk);
        Assert.Equal(SaveEnd.Saved, editor.Overwrite().End);
        Assert.Equal(editor.Draft.Text, OnDisk);
    }

    [Fact]
    public void Changes_become_a_variant_that_says_only_what_differs()
    {
        var editor = Open();
        Put(editor, "24 N/mm");
        Assert.Equal(SaveEnd.Saved, editor.SaveVariant("fern-saloon-stiffer.yaml", "stiffer").End);
        Assert.Equal(editor.SavedText, OnDisk);
        var variant = garage.Car("fern-saloon-stiffer.yaml");
        Assert.Equal("Fern saloon, stiffer", variant.Value!.Name);
        Assert.True(variant.Root!.IsSameAs(editor.Draft.Whole!));
        Assert.DoesNotContain("wheelbase", variant.Sources[0].Text, StringComparison.Ordinal);
        Assert.Equal(SaveEnd.Conflict, editor.SaveVariant("fern-saloon-stiffer.yaml", "again").End);
        Assert.Equal(SaveEnd.NameRefused, editor.SaveVariant("../outside.yaml", "outside").End);
        Assert.Equal(SaveEnd.TextRefused, Open().SaveVariant("nothing.yaml", "nothing").End);
    }

    [Fact]
    public void A_copy_keeps_every_line_but_its_name()
    {
        var editor = Open();
        Assert.Equal(SaveEnd.Saved, editor.SaveCopy("moss-saloon.yaml", "Moss saloon").End);
        Assert.Equal(
            editor.SavedText.Replace("car: Fern saloon", "car: Moss saloon", StringComparison.Ordinal), garage.Read("moss-saloon.yaml").Text);
        Assert.Equal("Moss saloon", garage.Car("moss-saloon.yaml").Value!.Name);
    }

    [Fact]
    public void A_new_car_from_another_says_of_every_value_that_it_was_not_measured_until_it_is()
    {
        Assert.Equal(SaveEnd.Saved, Open().SaveNewCar("moss-saloon.yaml", "Moss saloon").End);
        var (moss, _) = CarEditor.Open(garage, "moss-saloon.yaml");
        var car = moss!.Draft.Reading.Value!;
        Assert.Equal("Moss saloon", car.Name);
        Assert.DoesNotContain("Invented", car.Note, StringComparison.Ordinal);
        Assert.Equal("from Fern saloon, not measured", moss.Draft.UnmeasuredBy(["front", "spring", "rate"]));
        Assert.Equal("from Fern saloon, not measured", moss.Draft.UnmeasuredBy(["weighing", "front"]));
        Assert.Null(moss.Draft.UnmeasuredBy(["car"]));
        Assert.Null(moss.Draft.UnmeasuredBy(["note"]));
        Assert.DoesNotContain("invented", moss.Draft.Text, StringComparison.OrdinalIgnoreCase);
        var all = moss.Draft.Unmeasured.Count;
        Assert.All(
            moss.Sections.SelectMany(section => section.Entries).SelectMany(entry => entry.All).Where(
                entry => entry.Entries.Count == 0 && entry.Path is not (["car"] or ["note"])),
            entry => Assert.Equal("from Fern saloon, not measured", entry.From));

        // Written, it is this car's; its neighbour is not.
        moss.Do(["weighing", "front"], draft => draft.Put(["weighing", "front"], Heaveline.Files.Yaml.Node.Scalar("700 kg")));
        Assert.Null(moss.Draft.UnmeasuredBy(["weighing", "front"]));
        Assert.Equal("from Fern saloon, not measured", moss.Draft.UnmeasuredBy(["weighing", "rear"]));
        Assert.Equal(all - 1, moss.Draft.Unmeasured.Count);
        Assert.Contains("  front: 700 kg\n", moss.Draft.Text, StringComparison.Ordinal);

        // Told to hold, it is this car's with every letter as it was; a part of it with all its values.
        moss.Do(["front", "spring"], draft => (draft.Confirmed(["front", "spring"]), null));
        Assert.Null(moss.Draft.UnmeasuredBy(["front", "spring", "rate"]));
        Assert.Contains("    rate: 20.7 N/mm ± 4 %\n", moss.Draft.Text, StringComparison.Ordinal);
        Assert.Equal("from Fern saloon, not measured", moss.Draft.UnmeasuredBy(["rear", "spring", "rate"]));
        moss.Do([], draft => (draft.Confirmed([]), null));
        Assert.Empty(moss.Draft.Unmeasured);
        moss.Undo();
        Assert.NotEmpty(moss.Draft.Unmeasured);

        // A value taken out takes its mark with it.
        moss.Do(["headlamp"], draft => draft.TakeOut(["headlamp"]));
        Assert.DoesNotContain("headlamp", moss.Draft.Text, StringComparison.Ordinal);
        Assert.NotNull(moss.Draft.Reading.Value);
    }

    [Fact]
    public void Letters_typed_into_one_field_are_one_step_back()
    {
        var editor = Open();
        Put(editor, "2");
        Put(editor, "24");
        Put(editor, "24 N/mm");
        editor.Undo();
        Assert.Equal(editor.SavedText, editor.Draft.Text);
        Assert.False(editor.CanUndo);
    }

    [Fact]
    public void Numbers_stay_with_the_last_text_that_was_a_car()
    {
        var editor = Open();
        Put(editor, "24 N/mm");
        var good = editor.Good;
        Put(editor, "apples");
        Assert.Null(editor.Draft.Reading.Value);
        Assert.Same(good, editor.Good);
    }

    [Theory]
    [InlineData("softer front", "fern-saloon", "fern-saloon-softer-front.yaml")]
    [InlineData("Çité  d'Azur!", "", "çité-d-azur.yaml")]
    [InlineData("../..", "", "")]
    [InlineData("   ", "x", "")]
    public void A_file_name_is_made_of_letters_and_digits(string title, string behind, string name) => Assert.Equal(name, FileName.Of(title, behind));

    [Theory]
    [InlineData("new.yaml", "car: New\n", "")]
    [InlineData("new.exe", "car: New\n", "must end in .yaml or .yml")]
    [InlineData("../new.yaml", "car: New\n", "holds a folder")]
    [InlineData("..\\new.yaml", "car: New\n", "holds a folder")]
    [InlineData("/etc/new.yaml", "car: New\n", "holds a folder")]
    [InlineData("CON.yaml", "car: New\n", "device")]
    [InlineData(".hidden.yaml", "car: New\n", "must be a name inside the garage")]
    [InlineData("fern-saloon.yaml", "car: New\n", "already")]
    [InlineData("new.yaml", "nothing: 1\n", "no car, no variant and no road")]
    [InlineData("new.yaml", "car: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\n", "Line 1")]
    [InlineData("new.yaml", "car: New\0\n", "character")]
    public void A_file_is_brought_in_only_under_a_name_of_the_garage_and_only_if_it_can_be_read(string name, string text, string words)
    {
        var before = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Count(path => path.EndsWith(".yaml", StringComparison.Ordinal));
        var uploaded = UploadedFile.Into(garage, name, Encoding.UTF8.GetBytes(text));
        Assert.Contains(words, uploaded.Message, StringComparison.Ordinal);
        Assert.Equal(words.Length == 0, uploaded.Message.Length == 0);
        Assert.Equal(
            before + (words.Length == 0 ? 1 : 0),
            Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Count(path => path.EndsWith(".yaml", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_file_that_is_too_large_or_no_text_is_not_brought_in()
    {
        Assert.Contains(
            "262144", UploadedFile.Into(garage, "new.yaml", new byte[UploadedFile.Format.MostBytes + 1]).Message, StringComparison.Ordinal);
        Assert.Contains("UTF-8", UploadedFile.Into(garage, "new.yaml", [0xC3, 0x28]).Message, StringComparison.Ordinal);
        // Ten levels of ten: the text is small, what it would grow into is not.
        var bomb = "car: &a0 x\n"
            + string.Concat(Enumerable.Range(1, 9).Select(n => $"k{n}: &a{n} [{string.Join(", ", Enumerable.Repeat($"*a{n - 1}", 10))}]\n"));
        Assert.NotEmpty(UploadedFile.Into(garage, "bomb.yaml", Encoding.UTF8.GetBytes(bomb)).Message);
        Assert.False(System.IO.File.Exists(Path.Combine(folder, "bomb.yaml")));
    }

    [Fact]
    public void Variants_stand_under_their_car_each_once()
    {
        System.IO.File.WriteAllText(Path.Combine(folder, "orphan.yaml"), "variant: orphan\nof: gone.yaml\nchange: {wheelbase: 2 m}\n");
        System.IO.File.WriteAllText(Path.Combine(folder, "round-a.yaml"), "variant: a\nof: round-b.yaml\nchange: {wheelbase: 2 m}\n");
        System.IO.File.WriteAllText(Path.Combine(folder, "round-b.yaml"), "variant: b\nof: round-a.yaml\nchange: {wheelbase: 2 m}\n");
        var listing = garage.List();
        var families = CarFamily.Of(listing);
        Assert.Equal(
            ["bought springs", "cured", "towing", "unlucky", "measured for parts", "springs only"],
            families.Single(family => family.Car.Name == File).Variants.Select(variant => variant.Title));
        Assert.Equal(
            listing.Entries
                .Where(entry => entry.Kind is GarageKind.Car or GarageKind.Variant).Select(entry => entry.Name).Order(StringComparer.Ordinal),
            families.SelectMany(family => family.Variants.Prepend(family.Car)).Select(entry => entry.Name).Order(StringComparer.Ordinal));
    }

    private string OnDisk => garage.Read(File).Text!;

    private CarEditor Open() => CarEditor.Open(garage, File).Editor!;

    private static void Put(CarEditor editor, string rate)
    {
        string[] path = ["front", "spring", "rate"];
        editor.Do(path, draft => draft.Put(path, Node.Scalar(rate)));
    }
}
