using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>
/// Many passes at once, one per lane of the widest register that the processor really has. Each comes out as it would alone, bit for bit, but for the
/// last bits of powers in curved laws: the same source, step for step.
/// </summary>
public static class PassBatch
{
    /// <summary>How many passes run side by side on this machine.</summary>
    public static int Width => LaneWidth.Best;

    /// <summary>Computes the passes, in the order asked for, each on its own clock.</summary>
    /// <param name="requests">Cars, roads and speeds.</param>
    /// <param name="options">How to run them, in fixed steps.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">As for <see cref="Pass.Of"/>; exact pieces are asked for, which do not run side by side.</exception>
    public static IReadOnlyList<Pass> Of(IReadOnlyList<PassRequest> requests, PassOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(requests);
        options ??= PassOptions.Default;
        var passes = new Pass[requests.Count];
        foreach (var group in PassGroup.Of(requests, options, LaneWidth.Best))
        {
            cancellation.ThrowIfCancellationRequested();
            var results = group.Run(options, LaneWidth.Best, cancellation);
            for (var k = 0; k < results.Length; k++)
            {
                passes[group.Places[k]] = results[k];
            }
        }

        return passes;
    }
}
