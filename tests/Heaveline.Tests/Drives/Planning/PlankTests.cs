using System.Collections.Immutable;
using System.Numerics;
using Heaveline.Cars;
using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Drives.Planning;

public class PlankTests
{
    private static readonly BoardSize Thin = new() { Thickness = 0.022, Width = 0.195 };

    private static readonly Lazy<ImmutableArray<PlankFind>> OfVan = new(() => PlankMaker.Of(new PlankWish { Model = Garage("drover-van") }));

    [Fact]
    public void The_closed_form_of_a_row_is_the_transform_of_the_road_that_is_driven()
    {
        // The road's own heights, every 0.5 mm over 32.768 m, by the discrete transform; its error is of the order of the step's square.
        const int Count = 65536;
        const double Step = 0.0005;
        foreach (var layout in Some())
        {
            var profile = layout.Road.Left;
            double[] heights = [.. Enumerable.Range(0, Count).Select(k => profile.Height((k * Step) - 1.0))];
            var transform = RealFourier.Of(heights);
            for (var k = 0; k < 200; k++)
            {
                var n = k / (Count * Step);
                // The samples begin 1 m before the row.
                var shown = transform[k] * Step * Complex.FromPolarCoordinates(1.0, 2.0 * Math.PI * n);
                Assert.InRange((shown - layout.Spectrum(n)).Magnitude, 0.0, 2e-7);
            }
        }
    }

    [Fact]
    public void The_closed_form_moves_a_linear_car_as_its_pass_does()
    {
        // 2e-4 m/s where the greatest is some 0.1 m/s: the transform's top at 24 Hz.
        var damper = new Damper { Law = new TableDamper(new ForceTable([1.0, 2.0], [1500.0, 3000.0]), new ForceTable([1.0, 2.0], [1500.0, 3000.0])) };
        var axle = PlainCar.FrontAxle with { Damper = damper };
        var model = RideModel.Of(PlainCar.Saloon with { Front = axle, Rear = axle });
        var layout = Some().First();
        var pass = Pass.Of(model, layout.Road, 6.0);
        var (step, heave, turn) = new PlankResponse(model, 6.0).Over(layout);
        var gyration = BodyDirection.Gyration(model);
        for (var k = 40; k < pass.Count - 1; k += 7)
        {
            var at = pass.Time[k] / step;
            if (at < 0.0)
            {
                continue;
            }

            var i = (int)at;
            double Read(double[] of) => of[i] + ((at - i) * (of[i + 1] - of[i]));
            var rate = (pass.Heave[k + 1] - pass.Heave[k - 1]) / (2.0 * pass.SampleStep);
            Assert.InRange(Read(heave), rate - 1e-3, rate + 1e-3);
            Assert.InRange(Read(turn), (gyration * pass.PitchRate[k]) - 1e-3, (gyration * pass.PitchRate[k]) + 1e-3);
        }
    }

    [Fact]
    public void Shares_of_both_modes_make_the_whole()
    {
        foreach (var name in (string[])["fern-saloon", "sprig-kit-car", "thimble-city-car", "plover-motorcycle"])
        {
            var model = Garage(name);
            var (first, second) = (BodyDirection.Of(model, PlankGoal.First), BodyDirection.Of(model, PlankGoal.Second));
            Assert.Equal(0.0, (first.Heave * second.Heave) + (first.Turn * second.Turn), 9);
            for (var k = 0; k < 50; k++)
            {
                var (z, u) = Math.SinCos(0.13 * k);
                var energy = new BodyEnergy(z * z, z * u, u * u);
                Assert.Equal(1.0, energy.ShareOf(first) + energy.ShareOf(second), 9);
            }
        }
    }

    [Fact]
    public void A_row_edge_by_edge_moves_the_car_as_its_spectrum_does()
    {
        var model = Garage("fern-saloon");
        var response = new PlankResponse(model, 6.0);
        foreach (var row in PlankRow.All(BoardSize.Usual).Where((_, k) => k % 997 == 5))
        {
            if (row.Layouts(BoardSize.Usual).FirstOrDefault() is not { } layout)
            {
                continue;
            }

            var edges = response.After(row.Edges, row.End);
            var (step, heave, turn) = response.Over(layout);
            var from = (int)((layout.End + model.Car.Wheelbase.Si) / 6.0 / step);
            var whole = Enumerable.Range(from, (int)(1.0 / step)).Average(k => (heave[k] * heave[k]) + (turn[k] * turn[k]));
            var height = layout.Height;
            // An edge is a step at its middle in the search: its length is short beside the body's waves of some 4 m.
            Assert.InRange(edges.Whole * height * height / whole, 0.8, 1.25);
        }
    }

    [Fact]
    public void What_is_found_is_safe_at_the_speed_and_beside_it()
    {
        Assert.NotEmpty(OfVan.Value);
        foreach (var find in OfVan.Value)
        {
            Assert.InRange(find.Speed, 15.0 / 3.6, 30.0001 / 3.6);
            Assert.InRange(find.Layout.Height, 0.01, PlankWish.MostHeight);
            Assert.All(find.Layout.Places, p => Assert.True(p.Edge >= p.Height && 2.0 * p.Edge <= p.Length + 1e-9, "An edge is steeper than 45°."));
            foreach (var factor in (double[])[0.95, 1.0, 1.05])
            {
                var pass = Pass.Of(Garage("drover-van"), find.Layout.Road, factor * find.Speed);
                Assert.Equal(PassOutcome.Completed, pass.Outcome);
                for (var i = 0; i < 4; i++)
                {
                    Assert.True(pass.TyreLoad(i).Min() > 0.19 * pass.TyreLoad(i)[0]);
                    Assert.True(pass.Travel(i).Max() < pass.Model.BumpTouch[i] - 0.0049);
                    Assert.True(pass.Travel(i).Min() > pass.Model.ReboundTouch[i] + 0.0049);
                }
            }
        }
    }

    [Fact]
    public void The_vans_rear_swings_almost_alone_and_no_board_does_that_for_its_front()
    {
        var rear = OfVan.Value.Single(f => f.Goal == PlankGoal.Second);
        Assert.Equal(BodySwing.RearEnd, BodyModes.Of(Garage("drover-van")).Second.Swing);
        Assert.True(rear.LeastShare > 0.9 && rear.LinearShare > 0.9);
        // The front wheels are over the planks first and have settled when the rear wheels leave.
        Assert.True(OfVan.Value.Single(f => f.Goal == PlankGoal.First).LeastShare < 0.6);
    }

    [Fact]
    public void A_single_plank_is_less_pure_than_what_is_found()
    {
        var model = Garage("drover-van");
        var direction = BodyDirection.Of(model, PlankGoal.Second);
        var plain = Road.From(new Plank { Height = new(0.022), Length = new(0.195), Edge = new(0.022) });
        var pass = Pass.Of(model, plain, 20.0 / 3.6);
        Assert.True(PlankMotion.Of(pass).After.ShareOf(direction) < OfVan.Value.Single(f => f.Goal == PlankGoal.Second).LeastShare);
    }

    [Fact]
    public void However_many_look_at_once_the_same_is_found()
    {
        var wish = new PlankWish { Model = Garage("thimble-city-car"), Boards = [Thin] };
        var (one, two) = (PlankMaker.Of(wish), PlankMaker.Of(wish, degree: 2));
        Assert.Equal(one.Select(f => (f.Layout.Words, f.Speed, f.Share)), two.Select(f => (f.Layout.Words, f.Speed, f.Share)));
    }

    [Fact]
    public void A_cutting_list_saws_every_piece_out_of_what_is_bought()
    {
        foreach (var layout in Some())
        {
            var list = CuttingList.Of(layout, 2);
            foreach (var (size, count) in list.Boards)
            {
                var sawn = list.Pieces.Where(p => p.Size == size).Sum(p => p.Length * p.Count);
                Assert.InRange(sawn, 1e-3, count * size.Length);
                // First fit leaves at most one board less than half full.
                Assert.True(sawn > 0.5 * (count - 1) * size.Length * 0.9);
            }

            Assert.Equal(CuttingList.Metres(layout, 2), list.Pieces.Sum(p => p.Length * p.Count), 9);
        }
    }

    private static IEnumerable<PlankLayout> Some()
    {
        PlankLayout Of(params (double Start, double Length, int Layers, double Edge, bool Along)[] places) => new()
        {
            Places = [.. places.Select(p => new LaidBoards
            {
                Start = p.Start, Length = p.Length, Layers = p.Layers, Size = Thin, Edge = p.Edge, IsAlong = p.Along,
            })],
        };
        yield return Of((0.0, 2.4, 2, 0.45, true), (3.1, 1.2, 1, 0.45, true));
        yield return Of((0.0, 0.195, 1, 0.022, false));
        yield return Of((0.0, 0.585, 1, 0.195, false), (1.1, 0.585, 1, 0.195, false), (2.3, 0.585, 1, 0.195, false));
    }

    private static RideModel Garage(string name)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", $"{name}.yaml")).Value!;
        return RideModel.Of(car, LoadedCar.UsualLoad(car));
    }
}
