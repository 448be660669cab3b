using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files.Editing;

public class CarTextTests
{
    private const string Text =
        """
        # A car for these tests.
        car: Bramble # invented
        wheelbase: 2.70 m

        front:
          # weighed with the brakes on
          spring:
            rate: 20.7 N/mm ± 4 %   # from the press
            tester: "club: press"
          bump-stop: {clearance: 75 mm, rate: 45 N/mm}
          damper:
            bump: [[0.1 m/s, 110 N], [0.3 m/s, 260 N]]
        loads:
          driver:
            - {what: driver, mass: 75 kg, in: driver}
            - what: dog
              mass: 20 kg
              height: 0.5 m

        """;

    [Theory]
    [InlineData("front/spring/rate", "21 N/mm", "    rate: 20.7 N/mm ± 4 %   # from the press", "    rate: 21 N/mm   # from the press")]
    [InlineData("front/spring/tester", "mine: new", "\"club: press\"", "\"mine: new\"")]
    [InlineData("front/spring/tester", "plain", "\"club: press\"", "plain")]
    [InlineData("car", "Bramble: mark 2", "car: Bramble #", "car: \"Bramble: mark 2\" #")]
    [InlineData("car", "the \"old\" one #2: it", "car: Bramble #", "car: 'the \"old\" one #2: it' #")]
    [InlineData("car", "two\nlines", "car: Bramble #", "car: \"two\\nlines\" #")]
    [InlineData("car", "", "car: Bramble #", "car: \"\" #")]
    [InlineData("car", "~", "car: Bramble #", "car: \"~\" #")]
    [InlineData("front/bump-stop/rate", "1, 2", "rate: 45 N/mm}", "rate: \"1, 2\"}")]
    [InlineData("front/damper/bump/2/2", "-30 N", "[0.3 m/s, 260 N]", "[0.3 m/s, -30 N]")]
    [InlineData("loads/driver/driver/mass", "80 kg", "mass: 75 kg", "mass: 80 kg")]
    [InlineData("loads/driver/2/mass", "21 kg", "mass: 20 kg", "mass: 21 kg")]
    [InlineData(
        "front/track",
        "1.5 m",
        "front:\n  # weighed with the brakes on\n  spring:",
        "front:\n  # weighed with the brakes on\n  track: 1.5 m\n  spring:")]
    [InlineData("front/bump-stop/exponent", "2", "rate: 45 N/mm}", "rate: 45 N/mm, exponent: 2}")]
    [InlineData(
        "front/spring/moves",
        "31 mm for 50 mm at the wheel",
        "   # from the press\n",
        "   # from the press\n    moves: 31 mm for 50 mm at the wheel\n")]
    [InlineData("kind", "two-wheeler", "car: Bramble # invented\n", "car: Bramble # invented\nkind: two-wheeler\n")]
    [InlineData("loads/driver/2/left", "0.1 m", "      mass: 20 kg\n", "      mass: 20 kg\n      left: 0.1 m\n")]
    [InlineData("rear/tyre/rate", "200 N/mm", "[0.3 m/s, 260 N]]\n", "[0.3 m/s, 260 N]]\nrear:\n  tyre: {rate: 200 N/mm}\n")]
    [InlineData("loads/driver/2/what", "cat", "- what: dog", "- what: cat")]
    public void A_value_is_put_in_its_place_and_nothing_else_moves(string path, string value, string before, string after)
    {
        Assert.Equal(Text.Replace(before, after, StringComparison.Ordinal), Edited(Text, KeyEdit.Put(path.Split('/'), value)));
        Assert.Contains(before, Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("front/spring/tester", "    tester: \"club: press\"\n", "")]
    [InlineData("front/spring/rate", "    rate: 20.7 N/mm ± 4 %   # from the press\n", "")]
    [InlineData("front/bump-stop", "  bump-stop: {clearance: 75 mm, rate: 45 N/mm}\n", "")]
    [InlineData("front/bump-stop/clearance", "{clearance: 75 mm, rate: 45 N/mm}", "{rate: 45 N/mm}")]
    [InlineData("front/bump-stop/rate", "{clearance: 75 mm, rate: 45 N/mm}", "{clearance: 75 mm}")]
    [InlineData("loads/driver/1", "    - {what: driver, mass: 75 kg, in: driver}\n", "")]
    [InlineData("loads/driver/dog", "    - what: dog\n      mass: 20 kg\n      height: 0.5 m\n", "")]
    [InlineData("loads/driver/dog/what", "- what: dog\n      mass", "- mass")]
    [InlineData("front/damper/bump/1", "[0.1 m/s, 110 N], ", "")]
    [InlineData("car", "car: Bramble # invented\n", "")]
    [InlineData(
        "front",
        "front:\n  # weighed with the brakes on\n  spring:\n    rate: 20.7 N/mm ± 4 %   # from the press\n    tester: \"club: press\"\n  bump-stop: "
        + "{clearance: 75 mm, rate: 45 N/mm}\n  damper:\n    bump: [[0.1 m/s, 110 N], [0.3 m/s, 260 N]]\n",
        "")]
    public void A_key_goes_with_its_lines_and_nothing_else_moves(string path, string before, string after)
    {
        Assert.Contains(before, Text, StringComparison.Ordinal);
        Assert.Equal(Text.Replace(before, after, StringComparison.Ordinal), Edited(Text, KeyEdit.Remove(path.Split('/'))));
    }

    [Fact]
    public void A_block_is_replaced_and_an_item_added_as_a_person_would_write_them()
    {
        var table = YamlReading.Value(new Heaveline.Files.SourceText("", "[[0.1 m/s, 100 N], [0.4 m/s, 300 N]]")).Value!;
        Assert.Contains(
            "\n    bump: [[0.1 m/s, 100 N], [0.4 m/s, 300 N]]\nloads:",
            Edited(Text, KeyEdit.Put(["front", "damper", "bump"], table)),
            StringComparison.Ordinal);

        var coil = YamlReading.Value(new Heaveline.Files.SourceText("", "coil: {wire: 12 mm, mean-diameter: 118 mm}\ntester: press")).Value!;
        Assert.Contains(
            "  spring:\n    coil: {wire: 12 mm, mean-diameter: 118 mm}\n    tester: press\n  bump-stop:",
            Edited(Text, KeyEdit.Put(["front", "spring"], coil)),
            StringComparison.Ordinal);

        var bag = Node.Group([new("what", Node.Scalar("bag: red")), new("mass", Node.Scalar("9 kg")), new("in", Node.Scalar("driver"))]);
        Assert.EndsWith(
            "      height: 0.5 m\n    - {what: \"bag: red\", mass: 9 kg, in: driver}\n",
            Edited(Text, KeyEdit.Append(["loads", "driver"], bag)),
            StringComparison.Ordinal);
        Assert.EndsWith(
            "      height: 0.5 m\n  bags:\n    - {what: \"bag: red\", mass: 9 kg, in: driver}\n",
            Edited(Text, KeyEdit.Append(["loads", "bags"], bag)),
            StringComparison.Ordinal);
        Assert.Contains(
            "260 N], [1 m/s, 700 N]]\n",
            Edited(Text, KeyEdit.Append(["front", "damper", "bump"], Node.List(Node.Scalar("1 m/s"), Node.Scalar("700 N")))),
            StringComparison.Ordinal);
        Assert.Contains("  spring: soft\n  bump-stop:", Edited(Text, KeyEdit.Put(["front", "spring"], "soft")), StringComparison.Ordinal);
        Assert.Contains(
            "wheelbase:\n  a: {b: 1}\n\nfront:",
            Edited(Text, KeyEdit.Put(["wheelbase"], Node.Group([new("a", Node.Group([new("b", Node.Scalar("1"))]))]))),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    [InlineData("\n")]
    public void Line_ends_indentation_and_byte_order_mark_stay_as_the_file_has_them(string lineBreak)
    {
        var text = "\uFEFF" + string.Join(
                lineBreak,
                "car: Bräm 😀 ble",
                "front:",
                "    spring:",
                "        rate: 1 N/mm",
                "    tyre: {rate: 2 N/mm}",
                "loads:",
                "    one:",
                "    -   what: dog",
                "        mass: 1 kg");
        var edited = Edited(
            text,
            KeyEdit.Put(["front", "spring", "tester"], "😀 press"),
            KeyEdit.Put(["front", "damper"], Node.Group(
            [
                new("bump", Node.List(Node.List(Node.Scalar("1 m/s"), Node.Scalar("2 N")))),
                new("moves", Node.Group([new("x", Node.Scalar("y"))])),
            ])),
            KeyEdit.Append(["loads", "one"], Node.Group([new("what", Node.Scalar("cat"))])),
            KeyEdit.Put(["loads", "one", "dog", "in"], "back"));
        Assert.Equal(
            "\uFEFF" + string.Join(
                lineBreak,
                "car: Bräm 😀 ble",
                "front:",
                "    spring:",
                "        rate: 1 N/mm",
                "        tester: 😀 press",
                "    damper:",
                "        bump: [[1 m/s, 2 N]]",
                "        moves: {x: y}",
                "    tyre: {rate: 2 N/mm}",
                "loads:",
                "    one:",
                "    -   what: dog",
                "        mass: 1 kg",
                "        in: back",
                "    - {what: cat}"),
            edited);
    }

    [Theory]
    [InlineData("car: a\ncar: b\n", "car", EditProblem.NotSound)]
    [InlineData("car: [a\n", "car", EditProblem.NotSound)]
    [InlineData("car: &x a\nnote: *x\n", "car", EditProblem.NotSound)]
    [InlineData("car: a\nloads:\n  -\n  - x\n", "car", EditProblem.NotSound)]
    [InlineData("car: |\n  two\n  lines\n", "car", EditProblem.BlockText)]
    [InlineData("car: >-\n  two\n  lines\nkind: car\n", "car", EditProblem.BlockText)]
    [InlineData("car: a\n", "car/name", EditProblem.NoSuchPlace)]
    [InlineData("loads: {a: [{what: dog}, {what: dog}]}\n", "loads/a/dog", EditProblem.NoSuchPlace)]
    [InlineData("loads: {a: [{what: dog}]}\n", "loads/a/cat", EditProblem.NothingThere)]
    [InlineData("loads: {a: [{what: dog}]}\n", "loads/a/2", EditProblem.NothingThere)]
    [InlineData("loads: {a: [{what: dog}]}\n", "loads/a/0", EditProblem.NothingThere)]
    public void What_cannot_be_put_for_sure_is_refused_by_name(string text, string path, EditProblem problem)
    {
        var outcome = CarFile.Edit(text, KeyEdit.Put(path.Split('/'), "b"));
        Assert.Null(outcome.Text);
        Assert.Equal(problem, outcome.Refusal!.Problem);
        Assert.Empty(outcome.Splices);
    }

    [Theory]
    [InlineData("car: a\n", "kind", EditProblem.NothingThere)]
    [InlineData("car: a\n", "front/spring", EditProblem.NothingThere)]
    [InlineData("car: a\n", "car", EditProblem.OnlyOne)]
    [InlineData("front:\n  track: 1 m\n", "front/track", EditProblem.OnlyOne)]
    [InlineData("loads:\n  a:\n    - x\n", "loads/a/1", EditProblem.OnlyOne)]
    [InlineData("front: {a: 1, # one\n  b: 2}\n", "front/b", EditProblem.CommentInside)]
    [InlineData("front: {a: 1, # one\n  b: 2}\n", "front/a", EditProblem.CommentInside)]
    [InlineData("x:\n  - a: 1\n    # about b\n    b: 2\n", "x/1/a", EditProblem.CommentInside)]
    public void What_cannot_be_taken_out_for_sure_is_refused_by_name(string text, string path, EditProblem problem)
    {
        var outcome = CarFile.Edit(text, KeyEdit.Remove(path.Split('/')));
        Assert.Null(outcome.Text);
        Assert.Equal(problem, outcome.Refusal!.Problem);
    }

    [Theory]
    [InlineData("a: 1\nnote: |\n  two\n\n  lines\n\nb: 2", "note", "a: 1\n\nb: 2")]
    [InlineData("note: two\n  lines\nb: 2\n", "note", "b: 2\n")]
    [InlineData("a: {x: 1}\nb: 2\n", "a/x", "a: {}\nb: 2\n")]
    [InlineData("a: {x: 'it, {', y: \"#, 2\"}\n", "a/x", "a: {y: \"#, 2\"}\n")]
    [InlineData("a: 1\nb: 2", "b", "a: 1")]
    [InlineData("a: 1 # one\n# two\nb:\n  - x # three\n# four\nc: 3\n", "b", "a: 1 # one\n# two\n# four\nc: 3\n")]
    public void Texts_of_other_styles_lose_a_key_cleanly(string text, string path, string after) =>
        Assert.Equal(after, Edited(text, KeyEdit.Remove(path.Split('/'))));

    [Theory]
    [InlineData("note: two\n  lines # c\nb: 2\n", "note", "one", "note: one # c\nb: 2\n")]
    [InlineData("note: 'two\n  lines' # c\nb: 2\n", "note", "it's", "note: 'it''s' # c\nb: 2\n")]
    [InlineData("note:\nb: 2\n", "note", "x", "note: x\nb: 2\n")]
    [InlineData("note: # why\nb: 2\n", "note", "x", "note: x # why\nb: 2\n")]
    [InlineData("note: ~ # why\nb: 2\n", "note", "x", "note: x # why\nb: 2\n")]
    [InlineData("a:\nb: 2\n", "a/x", "1", "a: {x: 1}\nb: 2\n")]
    [InlineData("a: {}\n", "a/x", "1", "a: {x: 1}\n")]
    [InlineData("a: {\n  b: 1, # one\n}\n", "a/x", "2", "a: {\n  b: 1, x: 2, # one\n}\n")]
    [InlineData("a: |\n  text\n  # no comment\n\n# comment\nb: 1\n", "zed", "2", "a: |\n  text\n  # no comment\n\n# comment\nb: 1\nzed: 2\n")]
    [InlineData("b: 1\na: |\n  text\n\n\n", "zed", "2", "b: 1\na: |\n  text\nzed: 2\n\n\n")]
    [InlineData("? a\n: 1\n", "a", "2", "? a\n: 2\n")]
    [InlineData("car: 'Bramble'\n", "car", "Thorn", "car: 'Thorn'\n")]
    [InlineData("car: \"Bramble\"\n", "car", "Thorn", "car: \"Thorn\"\n")]
    [InlineData("\"a b\" : 1\n", "a b", "2", "\"a b\" : 2\n")]
    public void Texts_of_other_styles_take_a_value_cleanly(string text, string path, string value, string after) =>
        Assert.Equal(after, Edited(text, KeyEdit.Put(path.Split('/'), value)));

    [Fact]
    public void An_edit_that_fails_takes_the_ones_before_it_back()
    {
        var outcome = CarFile.Edit(Text, KeyEdit.Put(["car"], "b"), KeyEdit.Remove(["kind"]));
        Assert.Null(outcome.Text);
        Assert.Equal(EditProblem.NothingThere, outcome.Refusal!.Problem);
        Assert.Equal("the file has no kind.", outcome.Refusal.Message);
    }

    [Fact]
    public void A_value_that_is_there_already_leaves_every_character()
    {
        var outcome = CarFile.Edit(Text, KeyEdit.Put(["front", "spring", "tester"], "club: press"));
        Assert.Equal(Text, outcome.Text);
        Assert.Empty(outcome.Splices);
    }

    [Fact]
    public void Keys_of_a_variant_go_where_a_car_file_has_them()
    {
        var edited = Edited(
            "variant: a\nof: b.yaml\nchange:\n  rear:\n    track: 1 m\n",
            KeyEdit.Put(["change", "front", "track"], "1.1 m"),
            KeyEdit.Put(["note"], "why"),
            KeyEdit.Put(["change", "rear", "spring"], Node.Nothing));
        Assert.Equal("variant: a\nof: b.yaml\nnote: why\nchange:\n  front: {track: 1.1 m}\n  rear:\n    track: 1 m\n    spring: ~\n", edited);
    }

    private static string Edited(string text, params KeyEdit[] edits)
    {
        var outcome = CarFile.Edit(text, edits);
        Assert.True(outcome.Refusal is null, outcome.Refusal?.Message);
        Assert.Equal(text, outcome.Undo(outcome.Text!));
        return outcome.Text!;
    }
}
