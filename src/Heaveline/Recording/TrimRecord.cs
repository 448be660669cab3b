using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Recording;

/// <summary>A car's balance at rest as a record: what is left over at a position, its exact slopes, and what it stands by there.</summary>
/// <param name="Record">The lines; what is given to it stands as <see cref="LiveGiven"/> says.</param>
/// <param name="Numbers">
/// Lines of what it gives, in order: nine left over, 81 slopes of theirs row after row, the trim as <see cref="LiveGiven.Trim"/> has it, margins
/// that must all be above zero.
/// </param>
internal sealed record TrimRecord(Record Record, IReadOnlyList<int> Numbers)
{
    private const int Unknowns = TrimBalance.Unknowns;

    /// <summary>The balance of a car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="numbers">Its numbers in the reference state.</param>
    /// <param name="given">Which of its numbers are given from outside; see <see cref="Recording.Record"/>.</param>
    public static TrimRecord Of(Car car, RideNumbers numbers, Func<int, int?>? given = null)
    {
        var record = new Record(given);
        using var writing = record.Begin();
        var (left, slopes) = (new int[Unknowns], new int[Unknowns * Unknowns]);
        var forces = new StandingForces<Dual<RecordLane>>(car, numbers);
        var there = new Dual<RecordLane>[Unknowns];
        for (var along = 0; along < Unknowns; along++)
        {
            record.Again();
            var position = Position(record, along);
            forces.At(position, there);
            for (var i = 0; i < Unknowns; i++)
            {
                (left[i], slopes[(i * Unknowns) + along]) = (there[i].Value.Line, there[i].Slope.Line);
            }

            if (along == 0)
            {
                forces.Check(position);
            }
        }

        int Flow(int q) => record.Source(Operation.Given, LiveGiven.Position + 7 + q);
        int[] trim = [.. Lines(forces.Travel), .. Lines(forces.Force), .. Lines(forces.Load), Flow(0), Flow(1)];
        return new(record, [.. left, .. slopes, .. trim, .. forces.Margins.Select(margin => margin.Value.Line)]);
    }

    /// <summary>The car's numbers in the order in which a record of its balance meets them.</summary>
    public static double[] NumbersOf(Car car, RideNumbers numbers) => Record.Heard(() =>
    {
        var forces = new StandingForces<Dual<RecordLane>>(car, numbers);
        var position = new Dual<RecordLane>[Unknowns];
        forces.At(position, new Dual<RecordLane>[Unknowns]);
        forces.Check(position);
    });

    private static Dual<RecordLane>[] Position(Record record, int along) =>
        [.. Enumerable.Range(0, Unknowns).Select(i => new Dual<RecordLane>(
            new(record.Source(Operation.Given, LiveGiven.Position + i)),
            new(i == along ? record.Constant(1.0, 1.0) : Record.Zero)))];

    private static int[] Lines(ReadOnlySpan<Dual<RecordLane>> lanes)
    {
        var lines = new int[lanes.Length];
        for (var i = 0; i < lines.Length; i++)
        {
            lines[i] = lanes[i].Value.Line;
        }

        return lines;
    }
}
