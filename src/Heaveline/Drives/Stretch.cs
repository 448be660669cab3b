namespace Heaveline.Drives;

/// <summary>A part of a drive.</summary>
/// <param name="From">Its beginning, s since the log's start.</param>
/// <param name="To">Its end, s since the log's start.</param>
public readonly record struct Stretch(double From, double To)
{
    /// <summary>How long it is, s.</summary>
    public double Length => To - From;
}
