namespace Heaveline.Tests.Cli;

/// <summary>A car file whose laws are all straight between their kinks, so that an exact run takes it. Invented.</summary>
internal static class StraightCar
{
    public const string Text =
        """
        car: Straight
        kind: car
        wheelbase: 2.6 m
        weighing: {front: 620 kg, rear: 560 kg}
        body: {centre-of-gravity-height: 0.55 m, pitch-index: 0.95, roll-inertia: 380 kg m2}
        front:
          track: 1.48 m
          unsprung-mass: 74 kg
          spring: {wheel-rate: 19 N/mm}
          damper: {damping-ratio: 0.28, rebound-per-bump: 1.5}
          bump-stop: {clearance: 70 mm, rate: 60 N/mm}
          rebound-stop: {clearance: 80 mm, rate: 80 N/mm}
          tyre: {rate: 190 N/mm}
        rear:
          track: 1.46 m
          unsprung-mass: 70 kg
          spring: {wheel-rate: 22 N/mm}
          damper: {damping-ratio: 0.28, rebound-per-bump: 1.5}
          bump-stop: {clearance: 80 mm, rate: 60 N/mm}
          rebound-stop: {clearance: 70 mm, rate: 80 N/mm}
          tyre: {rate: 190 N/mm}

        """;
}
