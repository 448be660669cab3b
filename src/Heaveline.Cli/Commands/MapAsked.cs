namespace Heaveline.Cli.Commands;

/// <summary>What was asked of the map command, as typed.</summary>
internal sealed record MapAsked(string Car, string Rule, string Measure, string Road, string From, string To, int SpeedCount, int Values, string? Load)
{
    /// <summary>The speeds, m/s, evenly from the slowest to the fastest.</summary>
    public IReadOnlyList<double> SpeedList()
    {
        var (from, to) = (Inputs.Speed(From), Inputs.Speed(To));
        if (!(to > from))
        {
            throw new Stopped($"heaveline: --from '{From}' must be slower than --to '{To}'.", ExitCode.WrongUsage);
        }

        return SpeedCount is >= 2 and <= 400
            ? [.. Enumerable.Range(0, SpeedCount).Select(i => from + ((to - from) * i / (SpeedCount - 1)))]
            : throw new Stopped($"heaveline: --speeds {SpeedCount}: give 2 to 400.", ExitCode.WrongUsage);
    }
}
