namespace Heaveline.Studies;

/// <summary>Where a reading stands among those of a worksheet.</summary>
/// <param name="Row">Which of the times that the choice was given, from 0.</param>
/// <param name="Column">Which of the values between commas, from 0.</param>
public readonly record struct ReadingPlace(int Row, int Column);
