using Heaveline.Drives.Identification;

namespace Heaveline.Drives.Recovery;

/// <summary>A number of the identified car: of the drive, of the file's own passes as they stand, and of the twin's.</summary>
/// <param name="Number">The number.</param>
/// <param name="Drive">As the drive gave it, 90 %.</param>
/// <param name="File">As the passes of the file's car give it to the same estimator.</param>
/// <param name="Twin">As the passes of the scaled car do.</param>
public sealed record TwinNumber(CarNumber Number, Bracket Drive, double File, double Twin);
