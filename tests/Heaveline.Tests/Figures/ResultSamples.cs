using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Press;

namespace Heaveline.Tests.Figures;

/// <summary>Figures built from computed results, to be printed and looked at.</summary>
public class ResultSamples
{
    private static IEnumerable<(string Name, Func<Figure> Figure)> All =>
    [
        ("result-pass", () => Of(DrawnCars.Over(DrawnCars.Hump, DrawnCars.Saloon, 40.0, DrawnCars.Driver))),
        ("result-pass-hard", () => Of(DrawnCars.Over(DrawnCars.Hump, DrawnCars.Saloon, 70.0, DrawnCars.FourUp))),
        ("result-pass-one-sided", () => Of(DrawnCars.Over(DrawnCars.OneSided, DrawnCars.Saloon, 60.0, DrawnCars.Driver))),
        ("result-pass-waves", () => Of(DrawnCars.Over(DrawnCars.Waves, DrawnCars.Linked, 80.0))),
        ("result-pass-two-wheeler", () => Of(DrawnCars.Over(DrawnCars.Hump, DrawnCars.TwoWheeler, 40.0, DrawnCars.TwoWheeler.LoadStates[0]))),
        ("result-compare", () => CompareFigure.Of(Compared(40.0))),
        ("result-speeds", () => CompareSpeedsFigure.Of(Speeds())),
        ("result-modes", () => Modes(RideModel.Of(DrawnCars.Saloon, DrawnCars.Driver))),
        ("result-modes-linked", () => Modes(RideModel.Of(DrawnCars.Linked, DrawnCars.FourUp))),
        ("result-modes-two-wheeler", () => Modes(RideModel.Of(DrawnCars.TwoWheeler, DrawnCars.TwoWheeler.LoadStates[0]))),
        ("result-loads", () => LoadStatesFigure.Of(DrawnCars.Loaded(DrawnCars.Saloon))),
        ("result-loads-two-wheeler", () => LoadStatesFigure.Of(DrawnCars.Loaded(DrawnCars.TwoWheeler))),
    ];

    /// <summary>Set HEAVELINE_SAMPLES to a folder to keep the files there and look at them.</summary>
    [Fact]
    public void Every_figure_of_a_result_prints()
    {
        var kept = Environment.GetEnvironmentVariable("HEAVELINE_SAMPLES");
        foreach (var (name, figure) in All)
        {
            var png = Png.Of(figure());
            Assert.True(png.Length > 20_000, $"{name} is nearly empty");
            if (kept is not null)
            {
                File.WriteAllBytes(Path.Combine(kept, name + ".png"), png);
            }
        }
    }

    internal static (string Name, Pass Pass, PassMeasures Measures)[] Compared(double speed) =>
    [
        .. from one in new[]
        {
            ("as it is", DrawnCars.Saloon),
            ("softer front springs", DrawnCars.SofterFront),
            ("firmer rear dampers", DrawnCars.FirmerRear),
        }
           let over = DrawnCars.Over(DrawnCars.Hump, one.Item2, speed, DrawnCars.Driver)
           select (one.Item1, over.Pass, over.Measures),
    ];

    internal static (string Name, IReadOnlyList<(Pass Pass, PassMeasures Measures)> Passes)[] Speeds()
    {
        double[] speeds = [20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0];
        return
        [
            .. from one in new[]
            {
                ("as it is", DrawnCars.Saloon),
                ("softer front springs", DrawnCars.SofterFront),
                ("interconnected", DrawnCars.Linked),
            }
               select (
                   one.Item1,
                   (IReadOnlyList<(Pass, PassMeasures)>)[.. speeds.Select(v => DrawnCars.Over(DrawnCars.Hump, one.Item2, v, DrawnCars.Driver))]),
        ];
    }

    private static Figure Modes(RideModel model) => ModesFigure.Of(model, BodyModes.Of(model));

    private static Figure Of((Pass Pass, PassMeasures Measures) one) => PassFigure.Of(one.Pass, one.Measures);
}
