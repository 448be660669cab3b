using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Where many passes can run beside this processor.</summary>
internal interface IMeasureDevice
{
    /// <summary>Runs what it can, and gives their numbers.</summary>
    /// <param name="group">The passes, of any roads, speeds and steps.</param>
    /// <param name="numbers">Their definitions.</param>
    /// <param name="give">Is given the place of a pass in its group and its numbers, from several threads.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The places of those that it leaves to the processor, and why, a reason each once.</returns>
    (IReadOnlyList<int> Left, IReadOnlyList<string> Why) Of(
        PassGroup group, CurveNumber[] numbers, Action<int, double[]> give, CancellationToken cancellation);
}
