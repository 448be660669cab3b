using CsCheck;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public class AnyCarTests
{
    private static readonly string[] Sound =
        [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
            .Order(StringComparer.Ordinal).Select(File.ReadAllText)];

    private static readonly string[] Numbers = ["0", "-1", "1e300", "1e-300", "1000", "0.001", "3", "~", "", "[]", "{}"];

    [Fact]
    public void A_damaged_car_file_is_read_or_refused_inside_itself_and_never_throws() =>
        Gen.Select(Gen.Int[0, Sound.Length - 1], Gen.Int[0, 5000], Gen.Int[0, 12], Gen.String["{}[]:,-&*'\"%#\n <~?a1.Nm"])
            .Sample((which, at, cut, insert) =>
            {
                var text = Sound[which];
                at %= text.Length;
                Check(text[..at] + insert + text[Math.Min(text.Length, at + cut)..]);
            }, iter: 300);

    [Fact]
    public void A_car_file_with_any_number_in_it_is_read_or_refused_and_never_throws() =>
        Gen.Select(Gen.Int[0, Sound.Length - 1], Gen.Int[0, 5000], Gen.Int[0, Numbers.Length - 1]).Sample((which, at, pick) =>
        {
            var text = Sound[which];
            var digits = System.Text.RegularExpressions.Regex.Matches(text, "[0-9.]+");
            var match = digits[at % digits.Count];
            Check(text[..match.Index] + Numbers[pick] + text[(match.Index + match.Length)..]);
        }, iter: 300);

    private static void Check(string text)
    {
        var reading = CarFile.Read(new SourceText("any.yaml", text));
        Assert.Equal(reading.Value is null, reading.Refusals.Count > 0);
        foreach (var refusal in reading.Refusals)
        {
            Assert.InRange(refusal.Line, 1, reading.Sources[0].LineCount);
            Assert.InRange(refusal.Column, 1, reading.Sources[0].Line(refusal.Line).Length + 1);
        }

        Assert.NotNull(reading.Format());
    }
}
