using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Tests.Drives;

/// <summary>Computed passes, one after the other, as a phone on the car's floor would feel them; level road between.</summary>
internal static class PlantedPasses
{
    /// <summary>The motion, with the instants at which the front wheels meet the obstacles.</summary>
    /// <param name="passes">The passes.</param>
    /// <param name="behind">The phone behind the front axle, m.</param>
    public static (PlantedMotion Motion, double[] Onsets) Driven(IReadOnlyList<Pass> passes, double behind)
    {
        var plan = new PlantedRoad { Bumps = [.. passes.Select(p => (PlantedBump.Round, p.Speed))], Drift = 0.0 };
        var (speed, yaw, onsets) = plan.Plan();
        var (vertical, pitch, rate) = (new double[speed.Length], new double[speed.Length], new double[speed.Length]);
        foreach (var (k, pass) in passes.Index())
        {
            var touch = PitchHit.Of(pass).Window.From;
            var (up, angle, turn) = (pass.VerticalAcceleration(behind, 0.0), pass.Pitch, pass.PitchRate);
            for (var i = 0; i < speed.Length; i++)
            {
                var place = ((i * PlantedRoad.Step) - onsets[k] + touch - pass.Start) / pass.SampleStep;
                var j = (int)Math.Floor(place);
                if (j < 0 || j + 1 >= pass.Count)
                {
                    continue;
                }

                double At(IReadOnlyList<double> values) => values[j] + ((place - j) * (values[j + 1] - values[j]));
                (vertical[i], pitch[i], rate[i]) = (At(up), At(angle), At(turn));
            }
        }

        return (
            new PlantedMotion { Step = PlantedRoad.Step, Speed = speed, Yaw = yaw, Vertical = vertical, Pitch = pitch, PitchRate = rate, Hum = 0.0 },
            onsets);
    }

    /// <summary>The number of the pass by the same definition, SI; the pitch acceleration below 8 Hz, as the drive has it.</summary>
    /// <param name="measure">Which number.</param>
    /// <param name="pass">The pass.</param>
    /// <param name="behind">The phone behind the front axle, m.</param>
    public static double Own(Measure measure, Pass pass, double behind)
    {
        var curves = new TracedCurves(pass);
        var vertical = PassSignal.Of(RideSignal.VerticalAcceleration(pass.Model, behind, 0.0));
        switch (measure.Key)
        {
            case "phone-rms-vertical":
                return Window.RmsOfRide(curves, vertical);
            case "phone-peak-vertical":
                return curves.Peak(vertical);
            case "hit-peak-pitch-acceleration":
                var rate = 1.0 / pass.SampleStep;
                var slow = MotionCurves.Derivative(ZeroPhase.Low(pass.PitchRate.AsSpan(), rate, MotionCurves.Fast), rate);
                return new Curve(pass, slow).Peak(PitchHit.Of(pass).Window);
            default:
                return HitCatalogue.All.Concat(SettlingCatalogue.All).Single(m => m.Key == measure.Key).Of(pass);
        }
    }
}
