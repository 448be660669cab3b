using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Rides;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// Weighted root mean square accelerations of one seat on a random road, from the frequency domain, by the transfer functions of the weightings.
/// Vertical at the seat by Wk, pitch by We (rad/s²), fore-aft and lateral at the head by Wd: the axes of ISO 2631-1:1997, table 1 (after a public
/// transcription), which defines them
/// at seat, backrest and feet; at the head they are a stand-in for the backrest of a rigid seat.
/// </summary>
public sealed record RandomComfort
{
    /// <summary>The seat.</summary>
    public required string Seat { get; init; }

    /// <summary>Vertical at the seat, Wk, m/s².</summary>
    public required double Vertical { get; init; }

    /// <summary>Pitch, We, rad/s².</summary>
    public required double Pitch { get; init; }

    /// <summary>
    /// What the standard counts of the pitch at the seat, m/s²: We times its factor 0.4 m/rad for pitch about a seated person's
    /// hip (ISO 2631-1:1997, 8.2.2, after a public transcription).
    /// </summary>
    public double CountedPitch => 0.4 * Pitch;

    /// <summary>Roll, We, rad/s².</summary>
    public required double Roll { get; init; }

    /// <summary>Fore-aft specific force at the head, Wd, m/s².</summary>
    public required double HeadForeAft { get; init; }

    /// <summary>Lateral specific force at the head, Wd, m/s².</summary>
    public required double HeadLateral { get; init; }

    /// <summary>Vertical at the seat, unweighted, m/s².</summary>
    public required double UnweightedVertical { get; init; }

    /// <summary>The numbers of every seat of the car.</summary>
    /// <param name="response">The response.</param>
    public static IReadOnlyList<RandomComfort> Of(RandomResponse response) => [.. response.Model.Car.Seats.Select(seat => Of(response, seat))];

    /// <summary>The numbers of a seat.</summary>
    /// <param name="response">The response.</param>
    /// <param name="seat">The seat.</param>
    public static RandomComfort Of(RandomResponse response, Seat seat)
    {
        var (model, body) = (response.Model, response.Model.Car.Body);
        var head = seat.Height.Si + seat.HeadAboveSeat.Si;
        var vertical = RideSignal.VerticalAcceleration(model, seat.BehindFrontAxle.Si, seat.LeftOfMiddle.Si);
        return new RandomComfort
        {
            Seat = seat.Name,
            Vertical = response.Rms(vertical, Weightings.Wk.Factor),
            Pitch = response.Rms(RideSignal.PitchAcceleration, Weightings.We.Factor),
            Roll = response.Rms(RideSignal.RollAcceleration, Weightings.We.Factor),
            HeadForeAft = response.Rms(RideSignal.ForeAftForce(head - (body.PitchAxisHeight?.Si ?? model.Body.Height)), Weightings.Wd.Factor),
            HeadLateral = response.Rms(RideSignal.LateralForce(head - (body.RollAxisHeight?.Si ?? model.Body.Height)), Weightings.Wd.Factor),
            UnweightedVertical = response.Rms(vertical),
        };
    }
}
