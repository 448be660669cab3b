using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Files;
using Heaveline.Files.Cars;

namespace Heaveline.Tests.Files;

/// <summary>A small sound car file, to be spoiled in one place.</summary>
internal static class TextCar
{
    public const string Sound = """
        car: Test car
        wheelbase: 2.50 m
        weighing: {front: 600 kg ± 2 kg, rear: 500 kg ± 2 kg}
        body: {centre-of-gravity-height: 0.55 m}
        front:
          track: 1.45 m
          unsprung-mass: 70 kg
          spring:
            rate: 22 N/mm
            spring-per-wheel: 0.90
          damper: {damping-ratio: 0.3}
          bump-stop: {clearance: 60 mm, rate: 50 N/mm, solid-after: 40 mm}
          tyre: {rate: 190 N/mm}
        rear:
          track: 1.44 m
          unsprung-mass: 60 kg
          spring: {wheel-rate: 17 N/mm}
          damper:
            bump: [[0.1 m/s, 120 N], [0.3 m/s, 300 N]]
            rebound: [[0.1 m/s, 240 N], [0.3 m/s, 600 N]]
            damper-per-wheel: 0.9
          bump-stop: {clearance: 70 mm, rate: 50 N/mm, solid-after: 40 mm}
          tyre: {rate: 190 N/mm}
        seats:
          driver: {behind-front-axle: 1.30 m, left: 0.35 m, height: 0.55 m}
        loads:
          driver:
            - {what: driver, mass: 75 kg, in: driver}

        """;

    /// <summary>The file with one part replaced.</summary>
    public static string With(string old, string spoiled)
    {
        Assert.Contains(old, Sound, StringComparison.Ordinal);
        var at = Sound.IndexOf(old, StringComparison.Ordinal);
        return Sound[..at] + spoiled + Sound[(at + old.Length)..];
    }

    public static Reading<Car> Read(string text) => CarFile.Read(new SourceText("test.yaml", text));
}
