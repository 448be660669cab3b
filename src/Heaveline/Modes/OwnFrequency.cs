namespace Heaveline.Modes;

/// <summary>The frequency of a swing whose stiffness hangs on the frequency, because a fluid line gives way with it.</summary>
internal static class OwnFrequency
{
    private const int Steps = 48;

    /// <summary>
    /// The ω with ω² = Ω²(ω), Ω² being stiffness over mass. A fluid column that swings too gives more than one; the swing asked for is the one in
    /// which least of the energy of motion is the fluid's.
    /// </summary>
    /// <param name="squared">Ω², (rad/s)², from ω in rad/s; infinity is the line shut.</param>
    /// <param name="fluid">Energy of the fluid's motion over that of the mass, from ω.</param>
    /// <param name="lines">The lines; empty: the stiffness does not hang on ω.</param>
    /// <returns>ω², (rad/s)²; that of the line open where it is not above zero.</returns>
    public static double Squared(Func<double, double> squared, Func<double, double> fluid, IReadOnlyList<FluidSide> lines)
    {
        var open = squared(0.0);
        if (lines.Count == 0 || !(open > 0.0))
        {
            return open;
        }

        // Positive below a swing, negative above. Past a line's own frequency it is stiffer than shut: there another swing may begin.
        double Left(double omega) => squared(omega) - (omega * omega);
        var top = 1.5 * Math.Sqrt(Math.Max(open, squared(double.PositiveInfinity)));
        var places = Enumerable.Range(1, Steps).Select(k => top * k / Steps)
            .Concat(lines.Where(line => line.NaturalOmega < top)
                .SelectMany(line => new[] { line.NaturalOmega * (1.0 - 1e-6), line.NaturalOmega * (1.0 + 1e-6) }))
            .Order();
        var (best, share, from) = (open, double.PositiveInfinity, 0.0);
        foreach (var to in places)
        {
            if (Left(from) > 0.0 && Left(to) <= 0.0)
            {
                var omega = Between(Left, from, to);
                if (fluid(omega) < share)
                {
                    (best, share) = (omega * omega, fluid(omega));
                }
            }

            from = to;
        }

        return best;
    }

    private static double Between(Func<double, double> left, double low, double high)
    {
        for (var n = 0; n < 60 && high - low > 1e-14 * high; n++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = left(middle) > 0.0 ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
