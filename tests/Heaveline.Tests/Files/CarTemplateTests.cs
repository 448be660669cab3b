using System.Text.RegularExpressions;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

public class CarTemplateTests
{
    private static readonly string Text = CarFile.Template("my car: a first try");

    [Fact]
    public void Every_blank_is_named_and_nothing_else_is_refused()
    {
        var blanks = Text.Split('\n').Count(line => Regex.IsMatch(line, @"^ *[\w-]+: fill in\b"));
        Assert.InRange(blanks, 14, 24);
        var refusals = CarFile.Read(new SourceText("my.yaml", Text)).Refusals;
        Assert.All(refusals, refusal => Assert.Contains("is not filled in yet", refusal.Message, StringComparison.Ordinal));
        Assert.Equal(blanks, refusals.Count);
    }

    [Fact]
    public void Filled_in_with_the_examples_it_is_a_car()
    {
        var filled = string.Join('\n', Text.Split('\n').Select(line => Regex.Replace(line, @"fill in( +#.* As: (.*))$", "$2$1")));
        var reading = CarFile.Read(new SourceText("my.yaml", filled));
        Assert.Empty(reading.Refusals);
        Assert.Equal("my car: a first try", reading.Value!.Name);
    }

    // Keys that exclude each other (a rate or a table) are refused as such; every other comment must be right as soon as its # is taken away.
    [Fact]
    public void With_every_comment_taken_in_no_key_is_unknown_and_no_line_is_broken()
    {
        var whole = Regex.Replace(Text, @"^( *)# (?=[ \w-]*[\w-]+:( |$)|  *- )", "$1", RegexOptions.Multiline);
        var lines = whole.Split('\n').Skip(3).Select(line => line.Replace("fill in", "1", StringComparison.Ordinal));
        var refusals = CarFile.Read(new SourceText("my.yaml", string.Join('\n', lines))).Refusals;
        Assert.NotEmpty(refusals);
        Assert.DoesNotContain(refusals, refusal => Regex.IsMatch(refusal.Message, "no key|unknown|YAML|indent|not taken", RegexOptions.IgnoreCase));
    }

    [Fact]
    public void Every_key_of_a_car_file_stands_in_it()
    {
        var seen = new HashSet<Shape>();
        void Look(Shape shape)
        {
            foreach (var key in seen.Add(shape) ? shape.Keys : [])
            {
                Assert.Matches($@"(?m)^[ #-]*{Regex.Escape(key.Name)}:( |$)", Text);
                if (key.Kind.Group is { } group)
                {
                    Look(group);
                }
            }
        }

        Look(CarWords.Shape.Layout);
        Assert.True(seen.Count > 15);
    }
}
