using System.Collections.Immutable;
using Heaveline.Answers;
using Heaveline.Figures;

namespace Heaveline.Studies;

/// <summary>One thing more that a told car tells, as every reader has it.</summary>
/// <param name="Table">Its numbers; no rows where they are not told.</param>
/// <param name="Sentences">What is said of it.</param>
/// <param name="Figure">Its figure; null where none is drawn of it.</param>
public sealed record DriveDetailPart(FactTable Table, ImmutableArray<Sentence> Sentences, Figure? Figure);
