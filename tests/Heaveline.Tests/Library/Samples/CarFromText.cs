#region using
using Heaveline;
using Heaveline.Files;
using Heaveline.Files.Cars;
#endregion

namespace Samples;

/// <summary>What docs/library.md shows of car files.</summary>
internal static class CarFromText
{
    public static void Run(TextWriter Console)
    {
        #region read
        var text = """
            car: My saloon
            wheelbase: 2.62 m
            weighing: {front: 690 kg, rear: 590 kg}
            body: {centre-of-gravity-height: 0.55 m, roll-inertia: 420 kg m2}
            front:
              track: 1.48 m
              unsprung-mass: 72 kg
              spring: {wheel-rate: 21 N/mm}
              damper:
                bump: [[0.1 m/s, 110 N], [1 m/s, 620 N]]
                rebound: [[0.1 m/s, 230 N], [1 m/s, 1400 N]]
                damper-per-wheel: 1
              tyre: {rate: 190 N/mm}
            rear:
              track: 1.48 m
              unsprung-mass: 72 kg
              spring: {wheel-rate: 19 N/mm}
              damper:
                bump: [[0.1 m/s, 110 N], [1 m/s, 620 N]]
                rebound: [[0.1 m/s, 230 N], [1 m/s, 1400 N]]
                damper-per-wheel: 1
              tyre: {rate: 190 N/mm}
            """;
        var reading = CarFile.Read(new SourceText("my-saloon.yaml", text));
        if (reading.Value is not { } car)
        {
            Console.WriteLine(reading.Format());
            return;
        }
        #endregion

        #region describe
        var standing = Ask.Describe(car);
        Console.WriteLine($"front {standing["front-frequency"]}, rear {standing["rear-frequency"]}, ratio {standing["ratio"]}");
        #endregion
    }
}
