using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>What the points of a seated person, rigid on the body, get in a pass, sample by sample.</summary>
internal sealed class SeatMotion
{
    private readonly Pass pass;
    private readonly Seat seat;
    private readonly SeatPoints points;
    private readonly double pitchAxis;
    private readonly double rollAxis;

    private SeatMotion(Pass pass, Seat seat, SeatPoints points)
    {
        (this.pass, this.seat, this.points) = (pass, seat, points);
        var body = pass.Model.Car.Body;
        pitchAxis = body.PitchAxisHeight?.Si ?? pass.Model.Body.Height;
        rollAxis = body.RollAxisHeight?.Si ?? pass.Model.Body.Height;
    }

    public ImmutableArray<double> HeadForeAft => pass.ForeAftForce(seat.Height.Si + seat.HeadAboveSeat.Si - pitchAxis);

    public static SeatMotion Of(Pass pass, Seat seat, SeatPoints points) => pass.Outcome == PassOutcome.Completed
        ? new(pass, seat, points)
        : throw new RefusedValueException("pass", "stopped early", "completed", pass.OutcomeSentence);

    /// <summary>The trace of a point and axis, m/s² or rad/s²; null where the model does not move that way.</summary>
    public ImmutableArray<double>? At(PointAxis at)
    {
        var (behind, up) = at.Point switch
        {
            MeasuringPoint.Backrest => (points.BackrestBehind.Si, points.BackrestAbove.Si),
            MeasuringPoint.Feet => (-points.FeetAhead.Si, -points.FeetBelow.Si),
            _ => (0.0, 0.0),
        };
        var height = seat.Height.Si + up;
        var rolls = pass.Model.Rolls;
        return at.Axis switch
        {
            MotionAxis.X => pass.ForeAftForce(height - pitchAxis),
            MotionAxis.Y => rolls ? pass.LateralForce(height - rollAxis) : null,
            MotionAxis.Z => pass.VerticalAcceleration(seat.BehindFrontAxle.Si + behind, seat.LeftOfMiddle.Si),
            MotionAxis.Roll => rolls ? pass.RollAcceleration : null,
            MotionAxis.Pitch => pass.PitchAcceleration,
            _ => null,
        };
    }

    /// <summary>The window asked for, or the usual one, inside the recording.</summary>
    public Window Recorded(Window? window)
    {
        var (first, last) = (pass.Time[0], pass.Time[^1]);
        var during = window
            ?? (pass.Road.Event is not null ? OverObstacle(last)
                : pass.Road.End > 0.0 ? new(0.0, Math.Min(pass.Road.End / pass.Speed, last)) : new Window(first, last));
        return during.From >= first - pass.SampleStep && during.To <= last + pass.SampleStep && during.Length >= 2.0 * pass.SampleStep
            ? during
            : throw new RefusedValueException(
                "window",
                string.Create(CultureInfo.InvariantCulture, $"{during.From:G4} to {during.To:G4} s"),
                FormattableString.Invariant($"inside {first:G4} to {last:G4} s"),
                "Record the pass for longer, or ask for a shorter stretch.");
    }

    // A record made shorter than that is taken to its end.
    private Window OverObstacle(double last)
    {
        var window = Window.OfRide(pass);
        return window with { To = Math.Min(window.To, last) };
    }

    /// <summary>
    /// Weights a trace from the start of the recording and keeps the window. A running r.m.s. begins at zero where the window does.
    /// </summary>
    public WeightedAcceleration Weigh(ImmutableArray<double> trace, Weighting weighting, Window during)
    {
        var rate = 1.0 / pass.SampleStep;
        var weighted = WeightedAcceleration.From(SampledAcceleration.Of(trace.AsSpan(), rate), weighting).Samples.Values.ToArray();
        return new(weighting, SampledAcceleration.Of(during.Of(pass.Time.AsSpan(), weighted), rate));
    }
}
