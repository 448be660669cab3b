using Heaveline.Files;
using Heaveline.Files.Keeping;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Tests.Files.Keeping;

public class StudyTextsTests
{
    [Fact]
    public void A_study_is_known_by_its_words_and_the_texts_of_its_files_wherever_they_lie()
    {
        var one = Of("/home/a/fern.yaml", "/home/a/lists/autumn.yaml", "name: Fern", "parts: autumn", "1");
        Assert.Equal(one.Hash, Of("/srv/other/f.yaml", "/srv/other/p.yaml", "name: Fern", "parts: autumn", "1").Hash);
        Assert.NotEqual(one.Hash, Of("/home/a/fern.yaml", "/home/a/lists/autumn.yaml", "name: Fern ", "parts: autumn", "1").Hash);
        Assert.NotEqual(one.Hash, Of("/home/a/fern.yaml", "/home/a/lists/autumn.yaml", "name: Fern", "parts: spring", "1").Hash);
        Assert.NotEqual(one.Hash, Of("/home/a/fern.yaml", "/home/a/lists/autumn.yaml", "name: Fern", "parts: autumn", "2").Hash);
        Assert.Matches("^[0-9a-f]{64}$", one.Hash);
    }

    [Fact]
    public void It_is_read_elsewhere_from_its_bytes_under_places_of_that_machine()
    {
        using var folder = new TemporaryFolder();
        var sent = Of("/home/a/fern.yaml", "/home/a/lists/autumn.yaml", "name: Fern", "parts: autumn", "1");
        var study = StudyTexts.OfBytes(sent.ToBytes());
        Assert.Equal((sent.Word, sent.Hash), (study.Word, study.Hash));
        var given = study.In(folder.Root);
        var (car, list) = (Path.Combine(folder.Root, "fern.yaml"), Path.Combine(folder.Root, "lists", "autumn.yaml"));
        Assert.Equal([("car", car), ("parts", list), ("use", car + " at 40 km/h"), ("seed", "1")], given.Words);
        Assert.Equal("name: Fern", File.ReadAllText(car));
        Assert.Equal("parts: autumn", File.ReadAllText(list));
        // Nothing of the folders above is told.
        Assert.DoesNotContain("home", System.Text.Encoding.UTF8.GetString(sent.ToBytes()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("../../outside.yaml")]
    [InlineData("/outside.yaml")]
    public void A_file_that_would_lie_outside_the_folder_is_refused(string name)
    {
        using var folder = new TemporaryFolder();
        var bytes = System.Text.Encoding.UTF8.GetBytes($$"""{"word":"choose","given":[],"files":[["{{name}}","x"]]}""");
        Assert.Throws<FormatException>(() => StudyTexts.OfBytes(bytes).In(Path.Combine(folder.Root, "a", "b")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Root, "*.yaml", SearchOption.AllDirectories));
    }

    [Fact]
    public void A_word_and_a_file_of_the_same_bytes_are_not_one_study()
    {
        static string Hash(string json) => StudyTexts.OfBytes(System.Text.Encoding.UTF8.GetBytes(json)).Hash;
        Assert.NotEqual(
            Hash("""{"word":"choose","given":[["a","b"]],"files":[]}"""),
            Hash("""{"word":"choose","given":[],"files":[["x","a"],["y","b"]]}"""));
    }

    [Fact]
    public void Words_that_would_be_taken_for_a_file_are_refused_and_so_is_a_file_that_was_read_under_another_name()
    {
        Assert.Contains("U+0001", Refused(new Given([("car", "/home/a/fern.yaml"), ("seed", "\u00010\u0001")])), StringComparison.Ordinal);
        Assert.Contains("'fern', which was read under another name", Refused(new Given([("car", "fern")])), StringComparison.Ordinal);

        static string Refused(Given given) => Assert.Throws<RefusedValueException>(() => StudyTexts.Of(
            "choose", given,
            [
                (given.Words[0].Words, [new SourceText("/home/a/fern.yaml", "name: Fern").ToInput()]),
            ])).Message;
    }

    [Theory]
    [InlineData("")]
    [InlineData("nothing")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"word":1,"given":[],"files":[]}""")]
    [InlineData("""{"word":"choose","given":[["car"]],"files":[]}""")]
    public void Other_bytes_are_no_study(string text) =>
        Assert.Throws<FormatException>(() => StudyTexts.OfBytes(System.Text.Encoding.UTF8.GetBytes(text)));

    private static StudyTexts Of(string car, string list, string carText, string listText, string seed) => StudyTexts.Of(
        "choose",
        new Given([("car", car), ("parts", list), ("use", car + " at 40 km/h"), ("seed", seed)]),
        [
            (car, [new SourceText(car, carText).ToInput()]),
            (list, [new SourceText(list, listText).ToInput()]),
            ("village-hump", [new SourceText("village-hump", "road: x").ToInput(builtIn: true)]),
        ]);
}
