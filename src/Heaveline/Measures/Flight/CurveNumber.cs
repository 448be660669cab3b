using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>
/// A number of a pass that is made of questions to its curves alone: it can be had while the pass runs, without a trace. It asks the same questions
/// in the same order whatever the answers are.
/// </summary>
/// <param name="of">The curves of a pass.</param>
internal delegate NotedNumber CurveNumber(MeasuredCurves of);
