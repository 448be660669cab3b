using Heaveline.Numerics;

namespace Heaveline.Search;

/// <summary>
/// The setups near a front: none on it is better by a margin in every wish that is guessed and at least as good in every one that is known. What is
/// left out is beaten even if its guesses are off by the margin.
/// </summary>
internal static class SetupShell
{
    // So many setups at a time on one core.
    private const int AtOnce = 4096;

    /// <summary>Marks the setups of the shell.</summary>
    /// <param name="wishes">Numbers of every setup, setup by setup; NaN in the first for one that is refused.</param>
    /// <param name="count">How many wishes there are.</param>
    /// <param name="known">From which wish on the numbers are exact.</param>
    /// <param name="front">Places of the front.</param>
    /// <param name="margin">The margin (–).</param>
    /// <param name="degree">How many cores may work.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static bool[] Of(
        double[] wishes, int count, int known, IReadOnlyList<int> front, double margin, int degree, CancellationToken cancellation)
    {
        var inside = new bool[wishes.Length / count];
        // What beats a setup is looked for from the front's wishes with the margin on them.
        var with = new double[front.Count * count];
        for (var f = 0; f < front.Count; f++)
        {
            for (var k = 0; k < count; k++)
            {
                with[(f * count) + k] = wishes[(front[f] * count) + k] * (k < known ? 1.0 + margin : 1.0);
            }
        }

        ParallelLoop.Each((inside.Length + AtOnce - 1) / AtOnce, degree, group =>
        {
            var last = 0;
            for (var at = group * AtOnce; at < Math.Min((group + 1) * AtOnce, inside.Length); at++)
            {
                if (double.IsNaN(wishes[at * count]))
                {
                    continue;
                }

                inside[at] = true;
                if (last < front.Count && Covers(last, at))
                {
                    inside[at] = false;
                    continue;
                }

                for (var f = 0; f < front.Count; f++)
                {
                    if (Covers(f, at))
                    {
                        (inside[at], last) = (false, f);
                        break;
                    }
                }
            }
        }, cancellation);
        return inside;

        bool Covers(int f, int at)
        {
            for (var k = 0; k < count; k++)
            {
                if (with[(f * count) + k] > wishes[(at * count) + k])
                {
                    return false;
                }
            }

            return front[f] != at;
        }
    }
}
