using CsCheck;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Figures.Silhouettes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Figures;

public class SilhouetteTests
{
    public static TheoryData<string> Kinds => [.. Enum.GetNames<SilhouetteKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Whatever_was_measured_the_outline_is_closed_and_every_line_is_finite(string kind) => Each(kind, (_, drawn) =>
    {
        SilhouettePath[] closed = [drawn.Outline, .. drawn.Glass, .. drawn.Panels];
        Assert.All(closed, path => Assert.True(path.IsClosed));
        Assert.All(closed.Concat(drawn.Creases), path => Assert.True(path.Places().Count > 1));
        Assert.All(closed.Concat(drawn.Creases).SelectMany(path => path.Places()), place =>
        {
            Assert.InRange(place.X, drawn.Measures.Rump - 0.5, drawn.Measures.Nose + 0.5);
            Assert.InRange(place.Z, 0.0, drawn.Measures.Height + 1.0);
        });
        Assert.True(Area(drawn.Outline) > 0.1, "an outline has an inside");
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_body_stands_clear_of_its_wheels_and_goes_on_over_them(string kind) => Each(kind, (car, drawn) =>
    {
        if (drawn.Kind == SilhouetteKind.Motorcycle)
        {
            return;
        }

        var (m, outline) = (drawn.Measures, drawn.Outline.Places());
        foreach (var hub in new[] { 0.0, m.Wheelbase })
        {
            for (var angle = 0.0; angle < 2.0 * Math.PI; angle += 0.1)
            {
                Assert.False(
                    IsInside(outline, hub + (1.02 * m.WheelRadius * Math.Cos(angle)), m.WheelRadius + (1.02 * m.WheelRadius * Math.Sin(angle))),
                    $"the body of a {kind} touches its wheel");
            }

            Assert.True(IsInside(outline, hub, m.WheelRadius + drawn.ArchRadius + 0.03), "there is sheet over the arch");
        }
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Heads_are_where_they_were_measured_and_in_a_closed_car_under_its_roof(string kind) => Each(kind, (car, drawn) =>
    {
        Assert.Equal(car.Seats.Select(seat => car.Wheelbase.Si - seat.BehindFrontAxle.Si), drawn.Measures.Heads.Select(head => head.X));
        Assert.Equal(car.Seats.Select(seat => seat.Height.Si + seat.HeadAboveSeat.Si), drawn.Measures.Heads.Select(head => head.Z));
        var outline = drawn.Outline.Places();
        foreach (var head in drawn.IsOpen ? [] : drawn.Measures.Heads)
        {
            for (var angle = 0.0; angle < 2.0 * Math.PI; angle += 0.2)
            {
                var (x, z) = (head.X + (SeatedPerson.HeadRadius * Math.Cos(angle)), head.Z + (SeatedPerson.HeadRadius * Math.Sin(angle)));
                Assert.True(IsInside(outline, x, z), $"a head of a {kind} at {head.X:F2} m, {head.Z:F2} m comes out of it");
            }
        }
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_lamp_stands_where_it_was_measured(string kind) => Each(kind, (car, drawn) =>
    {
        Assert.Equal(car.Wheelbase.Si + car.Headlamp!.AheadOfFrontAxle.Si, drawn.Lamp.X, 1e-12);
        Assert.Equal(car.Headlamp.Height.Si, drawn.Lamp.Z, 1e-12);
    });

    [Fact]
    public void A_wheel_is_as_large_as_it_was_measured()
    {
        var car = DrawnCars.Saloon with { Brakes = new() { WheelRadius = new(0.334) } };
        Assert.Equal(0.334, Silhouette.Of(car).Measures.WheelRadius);
        Assert.NotEqual(0.30, Silhouette.Of(DrawnCars.Saloon with { Brakes = new() }).Measures.WheelRadius, 1e-6);
    }

    /// <summary>The foremost place and the rearmost of an outline stand at the overhangs it was drawn for.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void An_outline_ends_at_its_overhangs(string kind) => Each(kind, (_, drawn) =>
    {
        if (drawn.Kind == SilhouetteKind.Motorcycle)
        {
            return;
        }

        var places = drawn.Outline.Places();
        Assert.InRange(places.Max(place => place.X), drawn.Measures.Nose - 0.09, drawn.Measures.Nose + 1e-9);
        Assert.InRange(places.Min(place => place.X), drawn.Measures.Rump - 1e-9, drawn.Measures.Rump + 0.12);
    });

    [Fact]
    public void A_car_is_drawn_as_its_file_says_and_else_by_a_guess_that_is_said()
    {
        var saloon = DrawnCars.Saloon;
        Assert.Equal(new(SilhouetteKind.Saloon, IsGuess: true), SilhouetteChoice.Of(saloon));
        Assert.Contains("guessed", SilhouetteChoice.Of(saloon).Caption, StringComparison.Ordinal);
        var said = SilhouetteChoice.Of(saloon with { BodyStyle = BodyStyle.PickUp });
        Assert.Equal(new(SilhouetteKind.PickUp, IsGuess: false), said);
        Assert.Equal(
            "Drawn as a generic pick-up; axles, heads and lamp stand where they were measured.", said.Caption);
        var high = saloon with
        {
            Rear = saloon.Rear with { Suspension = SuspensionKind.SolidAxle, RollInertia = new Amount<Inertia>(50.0) },
            Seats = [saloon.Seats[0] with { Height = new(0.95) }],
        };
        Assert.Equal(SilhouetteKind.OffRoader, SilhouetteChoice.Of(high).Kind);
        Assert.Equal(SilhouetteKind.Van, SilhouetteChoice.Of(high with { Wheelbase = new(3.4) }).Kind);
        Assert.Equal(
            new(SilhouetteKind.Motorcycle, IsGuess: false),
            SilhouetteChoice.Of(saloon with { Kind = VehicleKind.TwoWheeler }));
    }

    [Fact]
    public void Every_body_style_has_its_silhouette()
    {
        var kinds = Enum.GetValues<BodyStyle>().Select(style => Silhouette.Of(DrawnCars.Saloon with { BodyStyle = style }).Kind).ToArray();
        Assert.Equal(Enum.GetValues<SilhouetteKind>().Where(kind => kind != SilhouetteKind.Motorcycle), kinds);
    }

    [Fact]
    public void People_sit_in_their_seats_and_luggage_lies_where_it_was_put()
    {
        var car = DrawnCars.Saloon;
        var seat = car.Seats[0];
        var state = new LoadState
        {
            Name = "driver and bags",
            Loads =
            [
                new()
                {
                    Name = "driver",
                    Mass = new(75.0),
                    BehindFrontAxle = seat.BehindFrontAxle,
                    LeftOfMiddle = seat.LeftOfMiddle,
                    Height = seat.Height,
                },
                new() { Name = "bags", Mass = new(65.0), BehindFrontAxle = new(3.05), Height = new(0.72) },
                new() { Name = "spare wheel left at home", Mass = new(-15.0), BehindFrontAxle = new(3.2), Height = new(0.5) },
            ],
        };
        var aboard = Aboard.Of(car, state);
        var person = Assert.Single(aboard.People);
        Assert.Equal(car.Wheelbase.Si - 1.36, person.Head.X, 1e-12);
        Assert.Equal(0.52 + 0.70, person.Head.Z, 1e-12);
        Assert.False(person.IsFar);
        var (middle, length, height) = Assert.Single(aboard.Luggage);
        Assert.Equal((car.Wheelbase.Si - 3.05, 0.72), (middle.X, middle.Z));

        // 65 kg at 260 kg per square metre of side: a quarter of a square metre.
        Assert.Equal(0.25, length * height, 1e-12);
    }

    // Four hundred random vehicles of a kind, whose sizes lie about as far apart as those of real ones do.
    private static void Each(string name, Action<Car, Silhouette> holds)
    {
        var kind = Enum.Parse<SilhouetteKind>(name);
        var usual = SilhouetteProportion.Of(kind);
        Gen.Select(
            Gen.Double[0.8, 1.3], Gen.Double[0.85, 1.2], Gen.Double[0.05, 1.0], Gen.Double[0.40, 0.68], Gen.Double[0.30, 0.60], Gen.Double[0.0, 0.9],
            Gen.Double[-0.12, 0.12], Gen.Bool).Sample(
            (length, wheel, ahead, lamp, first, back, up, isMeasured) =>
            {
                var wheelbase = length * usual.Wheelbase;
                var ear = kind == SilhouetteKind.Motorcycle ? 1.55 : usual.Height - usual.RoofAboveHead + up;
                Seat At(double share, double higher) => new()
                {
                    Name = $"at {share:F2}",
                    BehindFrontAxle = new(share * wheelbase),
                    Height = new(ear - 0.7 + higher),
                };
                var car = DrawnCars.Saloon with
                {
                    Kind = kind == SilhouetteKind.Motorcycle ? VehicleKind.TwoWheeler : VehicleKind.Car,
                    Wheelbase = new(wheelbase),
                    Seats = [At(first, 0.0), At(first + (back * (0.95 - first)), 0.03)],
                    Brakes = isMeasured ? new() { WheelRadius = new(wheel * usual.WheelRadius) } : null,
                    Headlamp = new() { Height = new(lamp * usual.Height), AheadOfFrontAxle = new(ahead), Drop = new(0.01) },
                };
                holds(car, Silhouette.Of(kind, SilhouetteMeasures.Of(car, kind)));
            },
            iter: 400,
            threads: 1);
    }

    private static bool IsInside(IReadOnlyList<ScenePoint> outline, double x, double z)
    {
        var isInside = false;
        for (int i = 0, j = outline.Count - 1; i < outline.Count; j = i++)
        {
            var (a, b) = (outline[i], outline[j]);
            if (a.Z > z != b.Z > z && x < a.X + ((b.X - a.X) * (z - a.Z) / (b.Z - a.Z)))
            {
                isInside = !isInside;
            }
        }

        return isInside;
    }

    private static double Area(SilhouettePath path)
    {
        var places = path.Places();
        return Math.Abs(0.5 * places.Zip([.. places.Skip(1), places[0]], (a, b) => (a.X * b.Z) - (b.X * a.Z)).Sum());
    }
}
