using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>
/// A sharp step of the road under a tyre without contact length: the tyre's force jumps between two steps of the run. The formula takes what it sees
/// at a step for the half step on either side; the part of that which belongs to the other side of the jump is set right here, so that the impulse is
/// right to second order wherever the jump falls. Recorded is what holds at the sample itself.
/// </summary>
/// <param name="At">Step of the run next to the jump.</param>
/// <param name="Near">Height on the side of the jump that the step sees, m; 0 where nothing jumps.</param>
/// <param name="Far">Height on its other side, m.</param>
/// <param name="Share">Part of the step around it that lies on the other side (–), 0 to one half.</param>
internal readonly record struct RoadJump<TLane>(int At, Quad<TLane> Near, Quad<TLane> Far, Quad<TLane> Share)
    where TLane : struct, ILane<TLane>;
