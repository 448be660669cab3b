using Heaveline.Files.Cars;
using Heaveline.Files.Forms;
using Heaveline.Files.Garages;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Cars;

namespace Heaveline.Tests.Web;

/// <summary>Form and text are one thing: what is changed in the form is changed in the text, at one place and nowhere else.</summary>
public class CarDraftTests
{
    private static readonly Garage Garage = new(Path.Combine(Checkout.Root, "examples", "garage"));

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Garage.Folder, "*.yaml").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_value_of_every_example_has_its_field(string file)
    {
        var draft = Draft(file);
        var fields = FormSection.Of(draft, []).SelectMany(section => section.Entries).SelectMany(entry => entry.All).ToList();
        Assert.DoesNotContain(fields, field => field.IsMisshapen);
        var shown = fields.Where(field => field.Entries.Count == 0).Sum(field => Scalars(field.Node));
        // A variant shows its own head, and its base without the base's name and note.
        var head = draft.IsVariant ? draft.Own!.Entries.Where(entry => entry.Key != "change").Sum(entry => Scalars(entry.Value)) : 0;
        var hidden = draft.IsVariant ? new[] { "car", "note" }.Count(key => draft.Whole!.At(key) is not null) : 0;
        Assert.Equal(Scalars(draft.Whole!) - hidden + head, shown);
        Assert.Equal(fields.Count, fields.Select(field => field.Id).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_value_put_as_it_stands_changes_no_character(string file)
    {
        var draft = Draft(file);
        var leaves = FormSection.Of(draft, []).SelectMany(section => section.Entries).SelectMany(entry => entry.All)
            .Where(entry => entry.Node.Kind == NodeKind.Scalar && (!draft.IsVariant || draft.IsChangedHere(entry.Path)));
        Assert.All(leaves, leaf => Assert.Equal(draft.Text, draft.Put(leaf.Path, Node.Scalar(leaf.Node.Text)).Draft.Text));
    }

    [Fact]
    public void A_changed_value_changes_its_own_characters_only()
    {
        var draft = Draft("fern-saloon.yaml");
        var (changed, refusal) = draft.Put(["front", "spring", "rate"], Node.Scalar("23.5 N/mm ± 4 %"));
        Assert.Null(refusal);
        Assert.Equal(draft.Text.Replace("rate: 20.7 N/mm ± 4 %", "rate: 23.5 N/mm ± 4 %", StringComparison.Ordinal), changed.Text);
        Assert.Equal(23500.0, Assert.IsType<Heaveline.Cars.LinearSpring>(changed.Reading.Value!.Front.Spring.Law).Rate.Si, 1e-6);
    }

    [Fact]
    public void A_variant_gets_only_what_differs_from_its_base_and_gives_it_back()
    {
        var draft = Draft("fern-saloon-cured.yaml");
        var (changed, _) = draft.Put(["rear", "tyre", "rate"], Node.Scalar("190 N/mm"));
        Assert.True(changed.IsChangedHere(["rear", "tyre", "rate"]));
        Assert.False(changed.IsChangedHere(["rear", "tyre", "damping"]));
        Assert.False(changed.IsChangedHere(["note"]));
        Assert.Equal("190 N/mm", changed.Own!.At("change", "rear", "tyre", "rate")!.Text);
        Assert.Equal("210 N/mm ± 8 %", changed.Base!.At("rear", "tyre", "rate")!.Text);
        Assert.Equal(draft.Text, changed.PutBack(["rear", "tyre", "rate"]).Draft.Text);
    }

    [Fact]
    public void A_list_of_the_base_is_copied_into_the_variant_before_an_item_of_it_changes()
    {
        var draft = Draft("fern-saloon-cured.yaml");
        var (changed, refusal) = draft.Put(["loads", "driver", "1", "mass"], Node.Scalar("90 kg"));
        Assert.Null(refusal);
        Assert.Equal(90.0, changed.Reading.Value!.LoadStates.Single(load => load.Name == "driver").Loads[0].Mass.Si);
        Assert.Equal(draft.Whole!.At("loads", "four up with luggage")!.Items.Count, changed.Whole!.At("loads", "four up with luggage")!.Items.Count);
        Assert.Null(changed.Own!.At("change", "loads", "four up with luggage"));
    }

    [Fact]
    public void What_the_base_has_is_taken_out_of_a_variant_with_a_tilde_and_what_it_added_without_a_trace()
    {
        var draft = Draft("fern-saloon-cured.yaml");
        var (without, _) = draft.TakeOut(["rear", "anti-roll-bar"]);
        Assert.True(without.Own!.At("change", "rear", "anti-roll-bar")!.IsEmpty);
        Assert.Null(without.Whole!.At("rear", "anti-roll-bar"));
        Assert.Equal(draft.Text, without.PutBack(["rear", "anti-roll-bar"]).Draft.Text);
    }

    [Fact]
    public void One_way_to_give_a_rate_takes_the_place_of_another()
    {
        var wheelRate = CarFile.Form.At("front", "spring", "wheel-rate")!;
        var (car, refusal) = Draft("fern-saloon.yaml").Switch(["front", "spring", "rate"], "wheel-rate", BlankValue.Of(wheelRate));
        Assert.Null(refusal);
        Assert.Null(car.Whole!.At("front", "spring", "rate"));
        Assert.Equal("", car.Whole!.At("front", "spring", "wheel-rate")!.Text);
        var (variant, _) = Draft("fern-saloon-cured.yaml").Switch(["front", "spring", "rate"], "wheel-rate", BlankValue.Of(wheelRate));
        Assert.Null(variant.Whole!.At("front", "spring", "rate"));
        Assert.Null(variant.Own!.At("change", "front", "spring", "rate"));
    }

    [Fact]
    public void The_last_key_of_a_group_takes_the_group_with_it()
    {
        var (draft, refusal) = Draft("fern-saloon.yaml").TakeOut(["front", "friction", "half-width"]);
        Assert.Null(refusal);
        Assert.Null(draft.Whole!.At("front", "friction"));
        Assert.NotNull(draft.Reading.Value);
    }

    [Fact]
    public void Every_group_that_can_be_added_is_read_and_refused_only_where_it_is_empty()
    {
        var draft = Draft("sprig-kit-car.yaml");
        foreach (var field in CarFile.Form.All.Where(field => field.Path.Count is 1 or 2 && field.Path[0] != "" && !field.Path.Contains(FormField.Any)
            && CarDraft.At(draft.Whole, field.Path) is null && CarDraft.At(draft.Whole, [.. field.Path.SkipLast(1)]) is not null))
        {
            var (added, refusal) = draft.Put(field.Path, BlankValue.Of(field));
            Assert.True(refusal is null, $"{string.Join('/', field.Path)}: {refusal?.Message}");
            Assert.NotNull(added.Whole);
            Assert.All(Remarks.Of(added, Garage.Folder).Where(remark => remark.IsRefusal), remark => Assert.NotEmpty(remark.Path));
        }
    }

    [Theory]
    [InlineData("fern-saloon.yaml", "rate: 20.7 N/mm ± 4 %", "rate: 20.7 furlongs", "front/spring/rate")]
    [InlineData("fern-saloon.yaml", "wheelbase: 2.70 m ± 5 mm", "wheelbase: 27 m", "wheelbase")]
    [InlineData("fern-saloon.yaml", "[0.3 m/s, 260 N]", "[0.3 m/s, 260 apples]", "front/damper/bump")]
    [InlineData("fern-saloon.yaml", "{height: 0.66 m, ahead", "{ahead", "headlamp")]
    [InlineData("fern-saloon.yaml", "mass: 80 kg, behind", "mass: 80 m, behind", "loads/four up with luggage/5/mass")]
    [InlineData("fern-saloon.yaml", "  track: 1.52 m", "  trak: 1.52 m", "front")]
    [InlineData("fern-saloon-cured.yaml", "rate: 48 N/mm ± 4 %", "rate: 48 apples", "rear/spring/rate")]
    [InlineData("fern-saloon-cured.yaml", "variant: cured", "variant: ''", "variant")]
    public void A_refusal_stands_at_the_field_that_it_is_about(string file, string from, string to, string path)
    {
        var draft = Draft(file);
        Assert.Contains(from, draft.Text, StringComparison.Ordinal);
        var remarks = Remarks.Of(draft.With(draft.Text.Replace(from, to, StringComparison.Ordinal)), Garage.Folder);
        Assert.Contains(remarks, remark => remark.IsRefusal && string.Join('/', remark.Path) == path);
    }

    [Fact]
    public void What_no_field_can_show_keeps_its_line()
    {
        var draft = Draft("fern-saloon.yaml");
        var broken = draft.With(draft.Text.Replace("wheelbase: 2.70 m ± 5 mm", "wheelbase: [2.70", StringComparison.Ordinal));
        Assert.Null(broken.Whole);
        var remark = Assert.Single(Remarks.Of(broken, Garage.Folder));
        Assert.Empty(remark.Path);
        Assert.True(remark.Line >= 6);
        Assert.Empty(FormSection.Of(broken, [remark]));
    }

    private static CarDraft Draft(string file) => CarDraft.Of(Garage, file, Garage.Read(file).Text!);

    private static int Scalars(Node node) =>
        node.Kind == NodeKind.Scalar ? 1 : node.Items.Sum(Scalars) + node.Entries.Sum(entry => Scalars(entry.Value));
}
