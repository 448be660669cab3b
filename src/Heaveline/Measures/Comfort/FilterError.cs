namespace Heaveline.Measures.Comfort;

/// <summary>How far a digital filter is from the weighting it stands for, at its worst.</summary>
/// <param name="Relative">|H_digital − H|/|H|, magnitude and phase together (–).</param>
/// <param name="Frequency">Where, Hz.</param>
public readonly record struct FilterError(double Relative, double Frequency);
