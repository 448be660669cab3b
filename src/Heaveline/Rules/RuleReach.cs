namespace Heaveline.Rules;

/// <summary>
/// The values that are tried along a rule's axis: even over the usual range, and on at the same spacing until the car's own value lies well inside
/// under every load. At the end of what was tried nothing is known of what lies beyond, so the car must not stand there.
/// </summary>
internal static class RuleReach
{
    /// <summary>How far the values reach past the car's own, at least (–, of it).</summary>
    public const double Margin = 0.15;

    // Past so many times the values asked for the spacing is widened instead: the work grows with the values.
    private const int MostTimes = 2;

    /// <summary>The values, rising.</summary>
    /// <param name="usual">The usual range; its thirds fall on values where the count is one more than a multiple of three.</param>
    /// <param name="count">How many values in the usual range, at least 2.</param>
    /// <param name="owns">The car's own values, to lie inside by <see cref="Margin"/>.</param>
    public static IReadOnlyList<double> Even((double From, double To) usual, int count, IReadOnlyList<double> owns)
    {
        var steps = count - 1;
        double At(int i) => Math.Round(usual.From + ((usual.To - usual.From) * i / steps), 12);
        var known = owns.Where(own => double.IsFinite(own) && own > 0.0).ToList();
        if (known.Count == 0)
        {
            return [.. Enumerable.Range(0, count).Select(At)];
        }

        var (least, most) = ((1.0 - Margin) * known.Min(), (1.0 + Margin) * known.Max());
        var step = (usual.To - usual.From) / steps;
        // In twelfths of the usual range, so that a coarse and a fine map end at the same values.
        var twelfth = steps % 12 == 0 ? steps / 12 : 1;
        int Beyond(double gap) => gap > 0.0 ? (int)Math.Ceiling((gap / (step * twelfth)) - 1e-9) * twelfth : 0;
        var (below, above) = (Beyond(usual.From - least), Beyond(most - usual.To));
        var spacing = Spacing(steps, below + steps + above);
        below = (below + spacing - 1) / spacing * spacing;
        var last = (below + steps + above + spacing - 1) / spacing;
        List<double> values = [.. Enumerable.Range(0, last + 1).Select(i => At((i * spacing) - below)).Where(v => v > 0.0)];
        // Nothing of a car is tried at zero or below; there the last step is a shorter one.
        if (values[0] > least)
        {
            values.Insert(0, least);
        }

        return values;
    }

    // The thirds stay among the values where some spacing that leaves them there is wide enough.
    private static int Spacing(int steps, int whole)
    {
        var needed = Math.Max(1, (whole + (MostTimes * steps) - 1) / (MostTimes * steps));
        return Enumerable.Range(needed, Math.Max(1, (steps / 3) - needed + 1)).FirstOrDefault(k => steps % 3 == 0 && steps / 3 % k == 0, needed);
    }
}
