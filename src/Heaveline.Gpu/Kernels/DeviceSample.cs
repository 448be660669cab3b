using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// Where the number of a channel stands in a car. The channel is known when this is compiled, and so all but one of the comparisons are gone.
/// </summary>
internal static class DeviceSample<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Whether it stands there before the step, or comes out of it.</summary>
    public static bool IsBefore(int channel) => channel is < Channel.Accelerations or (>= Channel.Rates and < Channel.Force);

    /// <summary>Positions and rates, as they are before the step.</summary>
    public static T Before(int channel, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body) =>
        channel < Channel.Rates
            ? channel == Channel.Heave ? body.Z
                : channel == Channel.Pitch ? body.Theta
                : channel == Channel.Roll ? body.Phi
                : channel == Channel.Wheel ? front.UL
                : channel == Channel.Wheel + 1 ? front.UR
                : channel == Channel.Wheel + 2 ? rear.UL : rear.UR
            : channel == Channel.Rates + Channel.Heave ? body.ZRate
                : channel == Channel.Rates + Channel.Pitch ? body.ThetaRate
                : channel == Channel.Rates + Channel.Roll ? body.PhiRate
                : channel == Channel.Rates + Channel.Wheel ? front.WL
                : channel == Channel.Rates + Channel.Wheel + 1 ? front.WR
                : channel == Channel.Rates + Channel.Wheel + 2 ? rear.WL : rear.WR;

    /// <summary>Accelerations and forces, which the step worked out.</summary>
    public static T After(
        int channel, AxleState<T> front, AxleState<T> rear, PairPast<T> frontNow, PairPast<T> rearNow, BodyPast<T> body) =>
        channel < Channel.Tyre
            ? channel == Channel.Accelerations + Channel.Heave ? body.Z
                : channel == Channel.Accelerations + Channel.Pitch ? body.Theta
                : channel == Channel.Accelerations + Channel.Roll ? body.Phi
                : channel == Channel.Accelerations + Channel.Wheel ? frontNow.L
                : channel == Channel.Accelerations + Channel.Wheel + 1 ? frontNow.R
                : channel == Channel.Accelerations + Channel.Wheel + 2 ? rearNow.L : rearNow.R
            : channel < Channel.Force
                ? channel == Channel.Tyre ? front.TyreL
                    : channel == Channel.Tyre + 1 ? front.TyreR
                    : channel == Channel.Tyre + 2 ? rear.TyreL : rear.TyreR
                : channel == Channel.Force ? front.FL
                    : channel == Channel.Force + 1 ? front.FR
                    : channel == Channel.Force + 2 ? rear.FL : rear.FR;
}
