using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Studies;

/// <summary>In how many of the cars that the car file leaves possible a cure helps.</summary>
/// <param name="Helps">
/// Drawn cars in which it takes off what is felt, each against itself as described, or gets across where that does not.
/// </param>
/// <param name="Harms">Drawn cars that get across without it, in which it presses a stop deeper, lifts a wheel for longer or is worse still.</param>
/// <param name="Drawn">How many were drawn.</param>
public sealed record CureChance(int Helps, int Harms, int Drawn)
{
    /// <summary>The chance (–).</summary>
    public double Share => Helps / (double)Drawn;

    /// <summary>Whether it helps in nine drawn cars of ten, and does no harm in more than one of ten.</summary>
    public bool IsSure => Helps >= 0.9 * Drawn && Harms <= 0.1 * Drawn;

    /// <summary>Whether it is a cure at all: it helps in half of the drawn cars or more, and in no fewer than it harms.</summary>
    public bool IsCure => 2 * Helps >= Drawn && Harms <= Helps;

    // So many draws at a time that cars of one step fill the lanes.
    private const int AtOnce = 64;

    /// <summary>
    /// The chances of cures under one load: cars drawn together within the stated doubts, what they have in common once, and each crossing the road
    /// as described and with every cure.
    /// </summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="cures">The cars with each cure.</param>
    /// <param name="guard">What is measured, and what no cure may do.</param>
    /// <param name="run">How it is run.</param>
    /// <returns>A chance for each cure; null where the car states no doubts.</returns>
    /// <exception cref="Quantities.RefusedValueException">The doubts are too wide for such a car.</exception>
    internal static IReadOnlyList<CureChance>? Of(CureAsked asked, IReadOnlyList<LoadedCar> cures, CureGuard guard, StudyRun run)
    {
        CarDoubts[] doubts = [.. cures.Prepend(asked.Car).Select(car => CarDoubts.Of(car.Car, car.Load))];
        if (!doubts[0].AreStated)
        {
            return null;
        }

        var joint = JointDoubts.Of(doubts);
        var (helps, harms) = (new int[cures.Count], new int[cures.Count]);
        var rows = new double[asked.Draws][][];
        Numerics.ParallelLoop.Each((asked.Draws + AtOnce - 1) / AtOnce, run.Degree, group =>
        {
            int[] draws = [.. Enumerable.Range(group * AtOnce, Math.Min(AtOnce, asked.Draws - (group * AtOnce)))];
            PassRequest[] requests =
            [
                .. draws.SelectMany(draw => JointDraw.Of(joint, asked.Seed, draw).Models).Select(m => new PassRequest(m, asked.Road, asked.Speed)),
            ];
            var measured = BatchedMeasures.Of(requests, guard.Measured, BatchedMeasures.Usual, 1, run.Cancellation);
            foreach (var (k, draw) in draws.Index())
            {
                rows[draw] = measured[(k * doubts.Length)..((k + 1) * doubts.Length)];
            }
        }, run.Cancellation);
        foreach (var draw in rows)
        {
            for (var k = 0; k < cures.Count; k++)
            {
                // Where the car as described does not get across, a cure can only help; where it does, a cure that does not is harm.
                if (!double.IsFinite(draw[0][0]))
                {
                    helps[k] += double.IsFinite(draw[k + 1][0]) ? 1 : 0;
                    continue;
                }

                helps[k] += draw[0][0] - draw[k + 1][0] >= MeasureChange.Felt * draw[0][0] ? 1 : 0;
                harms[k] += guard.Breach(draw[0], draw[k + 1]) is CureBreach.None or CureBreach.Spoilt ? 0 : 1;
            }
        }

        return [.. helps.Zip(harms, (help, harm) => new CureChance(help, harm, asked.Draws))];
    }
}
