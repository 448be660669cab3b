using CsCheck;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

public class AnyTextTests
{
    private const string Sound = "title: Two\nsprings:\n  - rate: 24.5 N/mm ± 5 %\n    free-length: 310 mm\n  - { rate: 140 lb/in, free-length: "
        + "\"12.5 in\", at: wheel }\nwarm: true\ntable: [[1 m/s, 2 N], [2 m/s, 3 N]]\n";

    [Fact]
    public void A_damaged_file_is_read_or_refused_inside_itself_and_never_throws() =>
        Gen.Select(Gen.Int[0, Sound.Length - 1], Gen.Int[0, 12], Gen.String["{}[]:,-&*!|>'\"%@`#\t\n\r <~?ab1.N\0\u0085\u2028é\uFEFF\\/"])
            .Sample((at, cut, insert) =>
                Check(Sound[..at] + insert + Sound[Math.Min(Sound.Length, at + cut)..]));

    [Fact]
    public void Any_text_is_read_or_refused_inside_itself_and_never_throws() =>
        Gen.OneOf(Gen.String, Gen.String["{}[]:,-&*!|>'\"%@`#\t\n <~?ab1. "]).Sample(Check);

    private static void Check(string text)
    {
        var reading = Sample.Read(text);
        Assert.Equal(reading.Value is null, reading.Refusals.Count > 0);
        foreach (var refusal in reading.Refusals)
        {
            Assert.InRange(refusal.Line, 1, reading.Sources[0].LineCount);
            Assert.InRange(refusal.Column, 1, reading.Sources[0].Line(refusal.Line).Length + 1);
            Assert.True(refusal.Length >= 1);
            // An empty file has no line to mark: message and advice only.
            var marked = refusal is { Line: 1, Column: 1 } && reading.Sources[0].Line(1).Length == 0 ? 2 : 4;
            Assert.Equal(marked, refusal.Format(reading.Sources[0]).Split('\n').Length);
        }

        if (reading.Root is { } root)
        {
            Walk(root);
        }
    }

    private static void Walk(Node node)
    {
        Assert.True(node.Place is { Line: >= 1, Column: >= 1, Length: >= 1 });
        foreach (var child in node.Items.Concat(node.Entries.Select(entry => entry.Value)))
        {
            Walk(child);
        }
    }
}
