using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// Comfort of one seat in a computed pass by ISO 2631-1: points rigid on the body (no cushion), fore-aft and lateral as the specific
/// force an accelerometer fixed to the body shows, h·θ̈ − g·θ and −h·φ̈ + g·φ, with h the height above the pitch or roll axis (above
/// the centre of gravity where none is given).
/// </summary>
/// <remarks>
/// The filters start at rest with the recorded pass, on the level road before x = 0; nothing is left out after that for them to swing
/// in, since the car itself starts at rest. Yaw is not in the model, and without roll neither are roll and lateral motion: those axes
/// are absent from the total, not zero in it.
/// </remarks>
public sealed record PassComfort
{
    private PassComfort(
        Pass pass, Seat seat, Window window, IReadOnlyList<AxisComfort> axes, WeightedAcceleration sickness, double headRms, double headPeak)
    {
        Seat = seat;
        Window = window;
        IsSingleEvent = pass.Road.Event is not null;
        HoldsHit = !IsSingleEvent || window.To >= pass.RearLeaves;
        Axes = axes;
        Total = VibrationTotal.ForComfort([.. axes.Select(axis => axis.Rms)]);
        MotionSicknessDose = sickness.MotionSicknessDose;
        HeadForeAftRms = headRms;
        HeadForeAftPeak = headPeak;
    }

    /// <summary>The seat.</summary>
    public Seat Seat { get; }

    /// <summary>The stretch of the pass that the numbers are of.</summary>
    public Window Window { get; }

    /// <summary>
    /// Whether it is one obstacle: a single event has no root mean square of its own (it hangs on the window), no reaction of annex C and no
    /// sickness.
    /// It is judged by <see cref="Recorded"/>.
    /// </summary>
    public bool IsSingleEvent { get; }

    /// <summary>Whether the window lasts until the rear wheels have left the obstacle.</summary>
    public bool HoldsHit { get; }

    /// <summary>Vertical at the seat over the whole recording: its VDV and MTVV hardly hang on how long that is.</summary>
    public required WeightedAcceleration Recorded { get; init; }

    /// <summary>What each point and axis gets, in the order of <see cref="PointAxis.All"/>.</summary>
    public IReadOnlyList<AxisComfort> Axes { get; }

    /// <summary>Vibration total value for comfort, per point and over all, with the axes that are absent.</summary>
    public VibrationTotal Total { get; }

    /// <summary>
    /// MSDV of the seat's vertical with Wf, m/s^1.5. The relation to sickness is for 20 minutes and more; this is the dose of the window alone.
    /// </summary>
    public double MotionSicknessDose { get; }

    /// <summary>Root mean square fore-aft specific force at the head, m/s², unweighted.</summary>
    public double HeadForeAftRms { get; }

    /// <summary>Largest fore-aft specific force at the head, m/s², unweighted.</summary>
    public double HeadForeAftPeak { get; }

    /// <summary>Vertical at the seat.</summary>
    public AxisComfort SeatVertical => At(MeasuringPoint.Seat, MotionAxis.Z);

    /// <summary>Pitch at the seat.</summary>
    public AxisComfort Pitch => At(MeasuringPoint.Seat, MotionAxis.Pitch);

    /// <summary>Likely reactions to the total, as a guide (public transport, annex C); none to a single event.</summary>
    public IReadOnlyList<ComfortReaction> Reactions => IsSingleEvent ? [] : ComfortReaction.Of(Total.Value);

    /// <summary>Share of the total's square that a point and axis makes (–).</summary>
    public double ShareOf(AxisComfort axis) => Total.Value > 0.0 ? axis.Rms.ForComfort * axis.Rms.ForComfort / (Total.Value * Total.Value) : 0.0;

    /// <summary>One of the axes.</summary>
    /// <exception cref="RefusedValueException">It is absent: yaw, or roll and lateral of a car that does not roll.</exception>
    public AxisComfort At(MeasuringPoint point, MotionAxis axis) => Axes.FirstOrDefault(one => one.At.Point == point && one.At.Axis == axis)
        ?? throw new RefusedValueException(
            "axis", PointAxis.Of(point, axis).Words, "one that the model moves along", "Yaw is not in the model; a two-wheeler does not roll in it.");

    /// <summary>The comfort of a seat in a pass.</summary>
    /// <param name="pass">A completed pass with at least 158 samples a second (the standard's band).</param>
    /// <param name="seat">The seat; it need not be one of the car's.</param>
    /// <param name="points">Backrest and feet from the hip point; left out: a car seat's.</param>
    /// <param name="window">
    /// The stretch the numbers are of; the filters run from the start of the recording all the same. Left out: over an obstacle
    /// 3 s from the front wheels' first touch (<see cref="Measures.Window.OverObstacle"/>), the same at every speed; on other roads while the front
    /// wheels are on the road.
    /// </param>
    /// <exception cref="RefusedValueException">The pass stopped early, the window is not recorded, or there are too few samples a second.</exception>
    public static PassComfort Of(Pass pass, Seat seat, SeatPoints? points = null, Window? window = null)
    {
        var motion = SeatMotion.Of(pass, seat, points ?? SeatPoints.Default);
        var during = motion.Recorded(window);
        List<AxisComfort> axes = [];
        foreach (var at in PointAxis.All)
        {
            if (motion.At(at) is { } trace)
            {
                axes.Add(new(at, Rms(during.Of(pass.Time.AsSpan(), trace.AsSpan())), motion.Weigh(trace, at.Weighting, during)));
            }
        }

        var vertical = motion.At(PointAxis.Of(MeasuringPoint.Seat, MotionAxis.Z))!.Value;
        var head = motion.HeadForeAft;
        return new(
            pass,
            seat,
            during,
            axes,
            motion.Weigh(vertical, Weightings.Wf, during),
            Rms(during.Of(pass.Time.AsSpan(), head.AsSpan())),
            new Curve(pass, head).Peak(during))
        {
            Recorded = motion.Weigh(vertical, Weightings.Wk, new(pass.Time[0], pass.Time[^1])),
        };
    }

    // Over the same samples as the weighted r.m.s. that it stands beside.
    private static double Rms(ReadOnlySpan<double> samples)
    {
        var sum = 0.0;
        foreach (var x in samples)
        {
            sum += x * x;
        }

        return Math.Sqrt(sum / samples.Length);
    }
}
