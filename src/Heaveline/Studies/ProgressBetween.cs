namespace Heaveline.Studies;

/// <summary>Part of a longer progress: a share from 0 to 1 here is told as one between two others there.</summary>
internal sealed class ProgressBetween(IProgress<double> whole, double from, double to) : IProgress<double>
{
    public void Report(double value) => whole.Report(from + ((to - from) * value));
}
