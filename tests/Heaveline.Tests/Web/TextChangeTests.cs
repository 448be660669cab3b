using CsCheck;
using Heaveline.Web.Pages.Cars;

namespace Heaveline.Tests.Web;

public class TextChangeTests
{
    private static readonly Gen<string[]> Text = Gen.String["abc"].Array[0, 12]
        .Select(lines => lines.Select(line => line.Length > 2 ? line[..2] : line).Append("end").ToArray());

    [Fact]
    public void Lines_of_two_texts_are_laid_beside_each_other()
    {
        Assert.Empty(TextChange.Between("a\nb\n", "a\r\nb"));
        var lines = TextChange.Between("1\n2\n3\n4\n5\n6\n7\n8\n9", "1\n2\n3\n4\nfive\n6\n7\n8\n9\n10");
        Assert.Equal(
            "… ,3 ,4 −5 +five ,6 ,7 ,8 ,9 +10", string.Join(' ', lines.Select(line => $"{(line.Mark == ' ' ? "," : line.Mark)}{line.Text}")));
        Assert.Equal(["−a", "−b", "+c"], TextChange.Between("a\nb", "c").Select(line => $"{line.Mark}{line.Text}"));
    }

    [Fact]
    public void What_is_shown_stands_in_its_text_in_that_order_and_no_line_is_changed_that_need_not_be() => Gen.Select(Text, Text).Sample((a, b) =>
    {
        var shown = TextChange.Between(string.Join('\n', a), string.Join('\n', b));
        Assert.True(StandsIn(a, shown.Where(line => line.Mark is ' ' or '−')));
        Assert.True(StandsIn(b, shown.Where(line => line.Mark is ' ' or '+')));
        var common = Common(a, b);
        Assert.Equal(a.Length - common, shown.Count(line => line.Mark == '−'));
        Assert.Equal(b.Length - common, shown.Count(line => line.Mark == '+'));
    });

    private static bool StandsIn(string[] text, IEnumerable<TextChange> lines)
    {
        var at = 0;
        return lines.All(line => (at = Array.IndexOf(text, line.Text, at) + 1) > 0);
    }

    // The longest common subsequence by its recurrence (Hirschberg 1975, algorithm A).
    private static int Common(string[] a, string[] b)
    {
        var length = new int[a.Length + 1, b.Length + 1];
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                length[i, j] = a[i - 1] == b[j - 1] ? length[i - 1, j - 1] + 1 : Math.Max(length[i - 1, j], length[i, j - 1]);
            }
        }

        return length[a.Length, b.Length];
    }
}
