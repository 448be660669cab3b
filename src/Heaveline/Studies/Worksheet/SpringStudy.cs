using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A spring pressed on a scale.</summary>
public static class SpringStudy
{
    private static readonly UsualReading UsualLength = UsualReading.Of<Length>("20 mm", "1000 mm");

    private static readonly UsualReading UsualForce = UsualReading.Of<Force>("0 N", "100000 N");

    private static readonly Choice Pair = SheetQuestion.Repeated(
        "pair",
        "Length of the spring and the force on it (or the scale's reading); without a doubt good to half its last digit. Repeat it.",
        "LENGTH,FORCE") with
    { IsNeeded = true, Columns = [new("length", "mm", "cm", "in"), new("force or scale", "N", "kg", "lbf", "lb")] };

    private static readonly Choice At = SheetQuestion.Choice(
        "at", "A length at which to tell force and rate: where it is fitted, or at ride height.", "LENGTH") with
    { Columns = [new("length", "mm", "cm", "in")] };

    /// <summary>The question as a command offers it.</summary>
    public static Question<SpringAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<SpringAsked>(
        "spring",
        """
        A spring's rate from pairs of length and force: interval, free length, preload, one rate or two.

        Example:
          heaveline worksheet spring --pair "310 mm, 480 N" --pair "290 mm, 905 N" --pair "270 mm, 1310 N" --pair "250 mm, 1735 N" --at "255 mm"
        """,
        [Pair, At],
        Read,
        Run);

    /// <summary>Works the pairs out.</summary>
    /// <param name="asked">The pairs.</param>
    /// <exception cref="RefusedValueException">There are too few lengths, or the force does not grow as the spring gets shorter.</exception>
    public static SheetAnswer Run(SpringAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var sheet = SpringSheet.Of([.. asked.Pairs.Select(p => p.Length)], [.. asked.Pairs.Select(p => p.Force)]);
        var table = new SheetTable("Spring")
            .Add("rate", "rate of a straight line through all", "N/mm", "F2", sheet.Rate)
            .Add("free-length", "length without force by that line", "mm", "F1", sheet.FreeLength)
            .Add("straightness", "straightness R²", "–", "F5", sheet.Straightness)
            .Add("scatter", "scatter about the chosen shape", "N", "F1", sheet.Scatter);
        foreach (var (step, k) in sheet.Steps.Select((step, k) => (step, k + 1)))
        {
            table.Add(
                FormattableString.Invariant($"step-{k}"),
                FormattableString.Invariant($"rate of the step {In.Millimetres.Of(step.From):0.#} to {In.Millimetres.Of(step.To):0.#} mm"),
                "N/mm",
                "F2",
                step.Rate);
        }

        if (sheet.Shape != SpringShape.Straight)
        {
            table.Add("rate-long", "rate at the longest length", "N/mm", "F2", sheet.EndRates[0])
                .Add("rate-short", "rate at the shortest length", "N/mm", "F2", sheet.EndRates[1])
                .Add("crossover-length", "crossover at length", "mm", "F1", In.Millimetres.Of(sheet.CrossoverLength))
                .Add("crossover-force", "crossover at force", "N", "F0", sheet.CrossoverForce);
        }

        if (asked.At is { } place)
        {
            RefuseOutside(place, sheet, asked);
            table.Add("force-at", "force at the length asked for", "N", "F0", sheet.ForceAt(place.Si))
                .Add("rate-at", "rate there", "N/mm", "F2", In.NewtonsPerMillimetre.Of(sheet.RateAt(place.Si)));
        }

        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = table.Facts,
            Notes = [.. sheet.Notes],
            From = SheetQuestion.Count(asked.Pairs.Length, "pair", "pairs") + " of length and force",
            Values = !sheet.IsUsable || sheet.Shape != SpringShape.Straight || sheet.Bends ? [] :
            [
                new("rate", SheetTable.Text(sheet.Rate, "N/mm")), new("free-length", SheetTable.Text(sheet.FreeLength, "mm")),
            ],
            CarFile = !sheet.IsUsable ? [] :
            [
                "spring:",
                .. sheet.Shape == SpringShape.Straight && !sheet.Bends
                    ? [$"  rate: {SheetTable.Text(sheet.Rate, "N/mm")}", $"  free-length: {SheetTable.Text(sheet.FreeLength, "mm")}"]
                    : new[] { $"  table: [{string.Join(", ", Rows(asked))}]" },
            ],
        };
    }

    // Past its free length a spring does not pull.
    private static void RefuseOutside(Amount<Length> place, SpringSheet sheet, SpringAsked asked)
    {
        var free = Math.Max(sheet.FreeLength.Si + sheet.FreeLength.Doubt.HalfWidth, asked.Pairs.Max(p => p.Length.Si));
        if (!(place.Si > 0.0 && place.Si <= free))
        {
            throw new RefusedValueException(
                "the length asked for (--at)",
                place.WithDoubt(0.0).ToString(),
                FormattableString.Invariant($"above 0 and at most the free length, {In.Millimetres.Of(free):0.#} mm"),
                "Give a length at which the spring is pressed together.");
        }
    }

    private static SpringAsked? Read(SheetReader reader)
    {
        var pairs = reader.Rows(Pair, 2).ToList();
        var lengths = reader.Readings<Length>(pairs.Select(p => p[0]), UsualLength);
        var forces = reader.Forces(pairs.Select(p => p[1]), UsualForce);
        var at = reader.Maybe<Length>(At, UsualLength);
        return reader.IsRefused ? null : new SpringAsked { Typed = reader.Typed, Pairs = [.. lengths.Zip(forces)], At = at };
    }

    // Repeats at one length make one row: a table must rise.
    private static IEnumerable<string> Rows(SpringAsked asked)
    {
        var longest = asked.Pairs.Max(p => p.Length.Si);
        return asked.Pairs.GroupBy(p => p.Length.Si).OrderByDescending(g => g.Key)
            .Select(g => FormattableString.Invariant($"[{In.Millimetres.Of(longest - g.Key):0.##} mm, {g.Average(p => p.Force.Si):0.#} N]"));
    }
}
