using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Drives;

namespace Heaveline.Studies;

/// <summary>The log of a recorded drive with the files that it was read from.</summary>
/// <param name="Log">The log.</param>
/// <param name="Files">The files, each by its own name without a folder.</param>
public sealed record RecordedLog(Log Log, ImmutableArray<InputDigest> Files);
