using Heaveline.Cars;

namespace Heaveline.Recording;

/// <summary>What a live car is asked to follow.</summary>
/// <param name="Sliders">Each slider's name and how many places it has.</param>
/// <param name="At">
/// The car and its load with some sliders at a place, the others as they stand (null); null, too, where there is no such car.
/// </param>
internal sealed record LiveAsked(
    IReadOnlyList<(string Key, int Places)> Sliders, Func<IReadOnlyList<int?>, (Car Car, LoadState Load)?> At);
