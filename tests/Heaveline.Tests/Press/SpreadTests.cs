using CsCheck;
using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Press.Scales;
using Heaveline.Press.Type;

namespace Heaveline.Tests.Press;

public class SpreadTests
{
    private static readonly Gen<(double Wanted, double Size)[]> Crowds =
        Gen.Select(Gen.Double[-20.0, 120.0], Gen.Double[2.0, 12.0]).Array[1, 9];

    [Fact]
    public void Labels_that_fit_never_overlap_never_leave_their_line_and_keep_their_order() => Crowds.Sample(crowd =>
    {
        var centres = Spread.Of([.. crowd.Select(one => one.Wanted)], [.. crowd.Select(one => one.Size)], 0.0, 100.0);
        Assert.Equal(crowd.Sum(one => one.Size) > 100.0 + 1e-9, centres is null);
        if (centres is null)
        {
            return;
        }

        for (var i = 0; i < crowd.Length; i++)
        {
            Assert.InRange(centres[i], crowd[i].Size / 2.0 - 1e-9, 100.0 - crowd[i].Size / 2.0 + 1e-9);
            for (var k = 0; k < crowd.Length; k++)
            {
                if (crowd[i].Wanted < crowd[k].Wanted)
                {
                    Assert.True(centres[k] - centres[i] >= (crowd[i].Size + crowd[k].Size) / 2.0 - 1e-9);
                }
            }
        }
    });

    [Fact]
    public void Labels_that_do_not_touch_stay_where_they_want_to_be() =>
        Assert.Equal([10.0, 50.0, 30.0], Spread.Of([10.0, 50.0, 30.0], [8.0, 8.0, 8.0], 0.0, 100.0)!);

    [Fact]
    public void Two_labels_on_one_spot_part_evenly_the_first_named_first() =>
        Assert.Equal([46.0, 54.0], Spread.Of([50.0, 50.0], [8.0, 8.0], 0.0, 100.0)!);

    /// <summary>
    /// The answer is the least-squares one: no small move of the labels that keeps them apart brings them closer to where they want to be.
    /// </summary>
    [Fact]
    public void No_other_placing_is_closer() => Gen.Select(Crowds, Gen.Int[0, 1_000_000]).Sample((crowd, seed) =>
    {
        double[] wanted = [.. crowd.Select(one => one.Wanted)], sizes = [.. crowd.Select(one => one.Size)];
        if (Spread.Of(wanted, sizes, 0.0, 100.0) is not { } centres)
        {
            return;
        }

        var random = new Random(seed);
        double Miss(double[] places) => places.Select((place, i) => (place - wanted[i]) * (place - wanted[i])).Sum();
        for (var attempt = 0; attempt < 20; attempt++)
        {
            double[] moved = [.. centres.Select(centre => centre + 0.4 * (random.NextDouble() - 0.5))];
            var order = Enumerable.Range(0, moved.Length).OrderBy(i => centres[i]).ToArray();
            var allowed = moved[order[0]] >= sizes[order[0]] / 2.0 && moved[order[^1]] <= 100.0 - sizes[order[^1]] / 2.0
                && order.Zip(order.Skip(1)).All(pair => moved[pair.Second] - moved[pair.First] >= (sizes[pair.First] + sizes[pair.Second]) / 2.0);
            Assert.True(!allowed || Miss(moved) >= Miss(centres) - 1e-7);
        }
    });

    [Fact]
    public void The_names_of_six_curves_that_end_at_one_height_do_not_overlap()
    {
        var labels = Enumerable.Range(1, 6)
            .Select(i => new EndLabel($"variant {i}, softer front springs", new Stroke(Palette.Of(Ink.First), 1.0), 1.0, i == 6 ? 30.0 : 50.0))
            .ToArray();
        var ends = new EndLabels(labels, widest: 60.0);
        var plot = new Box(20.0, 0.0, 150.0, 130.0);
        Assert.True(ends.Fit(plot.Height));
        var rooms = ends.Rooms(plot, end => new Spot(plot.Right, end.Y));
        Assert.All(rooms, (room, i) => Assert.DoesNotContain(rooms.Skip(i + 1), room.Grown(-1e-6).Overlaps));
        Assert.False(ends.Fit(60.0));
    }

    [Fact]
    public void The_labels_of_crowded_marks_keep_off_one_another_and_inside_the_plot()
    {
        var random = new Random(3);
        var plot = new Box(0.0, 0.0, 220.0, 140.0);
        var marks = Enumerable.Range(0, 16)
            .Select(i => (new Spot(random.NextDouble() * 220.0, random.NextDouble() * 140.0), $"variant {i}")).ToArray();
        var rooms = BesideMarks.Of(marks, [], plot, Lettering.Label, []);
        Assert.All(rooms, room => Assert.True(plot.Holds(room)));
        Assert.All(rooms, (room, i) => Assert.DoesNotContain(rooms.Skip(i + 1), room.Overlaps));
    }
}
