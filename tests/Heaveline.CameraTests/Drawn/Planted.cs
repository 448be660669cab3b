using Heaveline.Camera.Drawn;
using Heaveline.Files.Cars;
using Heaveline.Roads;
using Heaveline.Tests.House;

namespace Heaveline.CameraTests.Drawn;

/// <summary>Films of the demo saloon over a hump of 75 mm at 40 km/h, 20 m away, 1080 rows: of everything in them the truth is known.</summary>
internal static class Planted
{
    private static readonly Lazy<DrawnPass> Pass = new(() => DrawnPass.Of(
        CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!,
        Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) }),
        40.0 / 3.6));

    /// <summary>From a stand, while the whole car is in the picture.</summary>
    public static DrawnFilm Stand { get; } = new DrawnFilm { Pass = Pass.Value }.WholeCar();

    /// <summary>From a hand that shakes by 6 px, with twice the noise.</summary>
    public static DrawnFilm Hand { get; } = By(c => c with { Shake = 6.0, Noise = 6.0 });

    /// <summary>Of a quarter of the pixels and a third of the time: for what is not a question of accuracy.</summary>
    public static DrawnFilm Small { get; } = new DrawnFilm
    {
        Pass = Pass.Value, Camera = new DrawnCamera { Width = 960, Height = 540, Distance = 14.0 }, From = -0.1, To = 0.6,
    };

    /// <summary>The same from another camera.</summary>
    public static DrawnFilm By(Func<DrawnCamera, DrawnCamera> change) =>
        new DrawnFilm { Pass = Pass.Value, Camera = change(new DrawnCamera()) }.WholeCar();
}
