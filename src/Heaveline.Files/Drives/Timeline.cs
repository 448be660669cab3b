namespace Heaveline.Files.Drives;

/// <summary>A column of instants with its unit.</summary>
internal sealed class Timeline
{
    private static readonly (string Name, decimal Factor, double Least, double Most)[] Units =
    [
        ("s", 1m, 0.0015, 2.5), ("ms", 1e-3m, 1.5, 2500.0), ("µs", 1e-6m, 1500.0, 2.5e6), ("ns", 1e-9m, 1.5e6, 2.5e9),
        ("days", 86400m, 1.7e-8, 2.9e-5),
    ];

    private Timeline(LogColumn column, string unit, decimal factor, bool isAgainstHeader)
    {
        (Column, Unit, IsAgainstHeader) = (column, unit, isAgainstHeader);
        Origin = column.Base * factor;
        Times = new double[column.Values.Length];
        for (var i = 0; i < Times.Length; i++)
        {
            Times[i] = column.Values[i] * (double)factor;
        }

        Alone = FarCell.Stamps(Times);
        foreach (var row in Alone)
        {
            Times[row] = double.NaN;
        }

        if (column.IsText)
        {
            OverMidnight();
        }

        (Roughness, First, Last) = Evenness();
    }

    /// <summary>The column.</summary>
    public LogColumn Column { get; }

    /// <summary>The unit that it was taken in.</summary>
    public string Unit { get; }

    /// <summary>Whether the header says another.</summary>
    public bool IsAgainstHeader { get; }

    /// <summary>What the instants count from, s.</summary>
    public decimal Origin { get; }

    /// <summary>Instants, s since the origin; not a number where a cell is blank.</summary>
    public double[] Times { get; }

    /// <summary>Rows whose stamps stand alone, far from those beside them: they count as blank.</summary>
    public int[] Alone { get; }

    /// <summary>The first instant, s since the origin.</summary>
    public double First { get; }

    /// <summary>The last instant, s since the origin.</summary>
    public double Last { get; }

    /// <summary>Spread of the steps over the median step: the sensor's own stamps are the most even.</summary>
    public double Roughness { get; }

    /// <summary>The instants of a column; null where they do not tell their unit.</summary>
    /// <param name="column">A column of instants.</param>
    /// <param name="isFast">Whether samples come faster than every 2.5 s.</param>
    /// <param name="unit">The unit that the user says; null: that of the header, or what the steps tell.</param>
    public static Timeline? Of(LogColumn column, bool isFast, string? unit = null)
    {
        if (column.Step() is not { } step)
        {
            return null;
        }

        if (column.IsText)
        {
            return new Timeline(column, "s", 1m, isAgainstHeader: false);
        }

        if (unit is not null)
        {
            return new Timeline(column, unit, Units.First(u => u.Name == unit).Factor, isAgainstHeader: false);
        }

        const double slowest = 60.0;
        var said = column.Meaning.Unit;
        var most = isFast ? 2.5 : slowest;
        foreach (var (name, factor, _, _) in Units.Where(u => u.Name == said))
        {
            if (step * (double)factor is >= 0.0005 and var seconds && seconds <= most)
            {
                return new Timeline(column, name, factor, isAgainstHeader: false);
            }
        }

        var isSaid = Units.Any(u => u.Name == said);
        foreach (var (name, factor, least, above) in Units)
        {
            if (step >= least && step < above)
            {
                return new Timeline(column, name, factor, isSaid);
            }
        }

        return !isFast && step is >= 2.5 and <= slowest ? new Timeline(column, "s", 1m, isSaid) : null;
    }

    private void OverMidnight()
    {
        const double day = 86400.0;
        var (added, before) = (0.0, double.NaN);
        for (var i = 0; i < Times.Length; i++)
        {
            if (Times[i] + added < before - (0.5 * day))
            {
                added += day;
            }

            Times[i] += added;
            before = double.IsNaN(Times[i]) ? before : Times[i];
        }
    }

    private (double Roughness, double First, double Last) Evenness()
    {
        var steps = new List<double>(Times.Length);
        var (first, before, all) = (double.NaN, double.NaN, 0);
        foreach (var t in Times)
        {
            if (double.IsNaN(t))
            {
                continue;
            }

            first = double.IsNaN(first) ? t : first;
            if (t != before && !double.IsNaN(before))
            {
                steps.Add(t - before);
            }

            all++;

            before = t;
        }

        if (steps.Count == 0)
        {
            return (double.PositiveInfinity, first, before);
        }

        // Samples that share a stamp are uneven too: another column that tells them apart goes before.
        var shared = 1.0 - (steps.Count / (double)Math.Max(all - 1, 1));
        steps.Sort();
        var middle = steps[steps.Count / 2];
        for (var i = 0; i < steps.Count; i++)
        {
            steps[i] = Math.Abs(steps[i] - middle);
        }

        steps.Sort();
        return (middle > 0.0 ? shared + (steps[(int)(0.75 * steps.Count)] / middle) : double.PositiveInfinity, first, before);
    }
}
