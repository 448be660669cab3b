namespace Heaveline.Recording;

/// <summary>A slider of a live car: the car's own numbers that it moves, at each of its places.</summary>
/// <param name="Key">Its name.</param>
/// <param name="Columns">Which of the car's numbers it moves, counted from <see cref="LiveGiven.Car"/>.</param>
/// <param name="Rows">Those numbers at each place; null where the car cannot be so, or is of another make there.</param>
internal sealed record LiveSlider(string Key, IReadOnlyList<int> Columns, IReadOnlyList<double[]?> Rows);
