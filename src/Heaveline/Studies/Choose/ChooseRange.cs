using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// What may go to a place whatever can be bought: springs of any rate between two, or the present dampers with all their forces times a factor
/// between two. In equal steps of its own size.
/// </summary>
/// <param name="From">The least: N/m at the spring itself, or a factor (–).</param>
/// <param name="To">The greatest.</param>
/// <param name="Step">The next is by so much of itself greater (–).</param>
public sealed partial record ChooseRange(double From, double To, double Step)
{
    // Finer steps are vanity beside the doubt of any part; coarser ones leave out what there is.
    private const double Finest = 0.005;
    private const double Coarsest = 0.5;

    private const int MostValues = 200;

    // Of steps multiplied on.
    private const double Rounding = 1e-9;

    // Farther than this from what was measured the shape of a damper's curve is nobody's.
    private const double LeastFactor = 0.3;
    private const double MostFactor = 3.0;

    /// <summary>Values beside those of the steps, laid in where the best was found.</summary>
    public ImmutableArray<double> Between { get; init; } = [];

    /// <summary>How a range may be written for a sort of parts.</summary>
    public static string ExampleOf(PartSort sort) => sort == PartSort.Damper ? "60 to 140 % in steps of 5 %" : "16 to 24 N/mm in steps of 2 %";

    /// <summary>
    /// All values, rising; the last step is longer or shorter, where the greatest is no whole number of steps away, by half a step at most: two
    /// values are never nearer than that.
    /// </summary>
    public ImmutableArray<double> Values
    {
        get
        {
            var values = new List<double>(Between);
            // A value nearer to the greatest than half a step gives way to it.
            for (var value = From; value == From || value * HalfStep <= To * (1.0 + Rounding); value *= 1.0 + Step)
            {
                values.Add(value);
            }

            return [.. values.Append(To).Distinct().Order()];
        }
    }

    /// <summary>The ratio of two values half a step apart (–).</summary>
    internal double HalfStep => Math.Sqrt(1.0 + Step);

    /// <summary>Whether two values are one but for rounding.</summary>
    internal static bool IsAlike(double one, double other) => Math.Abs(one - other) <= Rounding * Math.Abs(other);

    /// <summary>The same with a value in the middle of each whole gap beside some values, once a gap whoever it is beside.</summary>
    /// <param name="found">Values of the range.</param>
    internal ChooseRange Finer(IReadOnlyCollection<double> found)
    {
        var values = Values;
        return this with
        {
            Between =
            [
                .. values.Zip(values.Skip(1)).Where(gap => found.Any(value => IsAlike(value, gap.First) || IsAlike(value, gap.Second))
                    && gap.Second >= gap.First * (1.0 + Step) * (1.0 - Rounding)).Select(gap => Math.Sqrt(gap.First * gap.Second)),
            ],
        };
    }

    /// <summary>Whether words are meant as a range.</summary>
    internal static bool IsMeant(string words) => Meant().IsMatch(words);

    /// <summary>Reads one.</summary>
    /// <param name="place">The place.</param>
    /// <param name="words">"16 to 24 N/mm in steps of 2 %", or "60 to 140 % in steps of 5 %" of the present dampers.</param>
    internal static (ChooseRange? Range, string? Wrong) Read(PartPlace place, string words)
    {
        if (place.Sort() is not (PartSort.Spring or PartSort.Damper))
        {
            return (null, "is a range, which springs and dampers alone may have.");
        }

        var read = Written().Match(words);
        var unit = read.Groups["unit"].Value;
        if (Of(place, read.Groups["from"].Value, unit) is not { } from || Of(place, read.Groups["to"].Value, unit) is not { } to
            || !double.TryParse(read.Groups["step"].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent))
        {
            return (null, $"is no range of the {place.Name()}, two numbers above 0 with one unit and a step: write {ExampleOf(place.Sort())}.");
        }

        var step = In.Percent.ToSi(percent);
        return to == from ? (null, "ends where it begins: a range has two ends.")
            : !(to > from) ? (null, "ends below its beginning.")
            : !(step >= Finest && step <= Coarsest) ? (null, "has steps that are not between 0.5 % and 50 %.")
            : Math.Log(to / from) / Math.Log(1.0 + step) > MostValues ? (null, $"has more than {MostValues} steps.")
            : to * (1.0 + Rounding) < from * Math.Sqrt(1.0 + step)
                ? (null, "has ends nearer to each other than half a step: take a finer step, or ends farther apart.")
            : place.Sort() == PartSort.Damper && !(from >= LeastFactor && to <= MostFactor)
                ? (null, "leads beyond 30 to 300 % of the present dampers, where their curve tells nothing.")
            : (new ChooseRange(from, to, step), null);
    }

    /// <summary>A value in words.</summary>
    internal static string Words(PartPlace place, double value) => place.Sort() == PartSort.Damper
        ? FormattableString.Invariant($"{In.Percent.Of(value):0.##} % of the present")
        : FormattableString.Invariant($"{In.NewtonsPerMillimetre.Of(value):0.###} N/mm");

    /// <summary>The range in words.</summary>
    internal string Words(PartPlace place) => (place.Sort() == PartSort.Damper
            ? FormattableString.Invariant($"{In.Percent.Of(From):0.##} to {In.Percent.Of(To):0.##} % of the present")
            : FormattableString.Invariant($"{In.NewtonsPerMillimetre.Of(From):0.###} to {In.NewtonsPerMillimetre.Of(To):0.###} N/mm"))
        + FormattableString.Invariant($" in steps of {In.Percent.Of(Step):0.##} %");

    private static double? Of(PartPlace place, string number, string unit) => place.Sort() == PartSort.Damper
        ? unit == "%" && QuantityText.Number(number) is { } percent and > 0.0 ? In.Percent.ToSi(percent) : null
        : QuantityText.Parse<Stiffness>($"{number} {unit}") is { IsRead: true, Amount.Si: > 0.0 and var rate } ? rate : null;

    // Nobody calls a part so: what is wrong with it as a range is then said.
    [GeneratedRegex(@"^[-+]?[0-9].* to .*[0-9]| in steps of ", RegexOptions.CultureInvariant)]
    private static partial Regex Meant();

    [GeneratedRegex(
        @"^(?<from>[0-9]+(\.[0-9]+)?) to (?<to>[0-9]+(\.[0-9]+)?) ?(?<unit>\S.*?) in steps of (?<step>[0-9]+(\.[0-9]+)?) ?%$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
